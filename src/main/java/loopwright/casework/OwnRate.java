package loopwright.casework;

import loopwright.model.PartKind;

/**
 * How often one vehicle has had a failure, beside how often such vehicles have it.
 *
 * @param kind kind of part
 * @param mode name of the failure mode within the kind
 * @param found failures found, mended and proven there; a fraction where the readings left it open
 *     which of several it was
 * @param expected failures that the tables expect in as many cases
 * @param factor what the tables' rate is multiplied by
 */
public record OwnRate(PartKind kind, String mode, double found, double expected, double factor) {}
