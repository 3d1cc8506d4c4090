/**
 * A vehicle with a hidden failure and a simulated meter: for practice and for proving the
 * diagnosis, which never sees this room.
 */
package loopwright.bench;
