package loopwright.casework;

import loopwright.model.TerminalRef;

/**
 * A probe point in words.
 *
 * @param ref its name in lines and files, {@code F3.load}
 * @param title what a person calls it, for instance "beacon fuse F3, load side"
 * @param label what is written there on the vehicle; may be empty
 * @param how how to reach it; may be empty
 * @param minutes working time to reach it
 * @param reachable whether a lead can touch the metal
 */
public record PointView(
    TerminalRef ref, String title, String label, String how, double minutes, boolean reachable) {}
