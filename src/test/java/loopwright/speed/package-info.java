/**
 * Measurements of speed and heap, run by {@code mvn -Pbench test-compile exec:exec
 * -Dbench=PATTERN}; never part of the build, since they depend on the machine.
 */
package loopwright.speed;
