/**
 * The vehicle: parts, terminals, circuits, settings, units. JDK only; knows nothing of solving,
 * files or screens. Quantities are SI; a component's name carries the unit where it is not plain.
 */
package loopwright.model;
