/**
 * The command line: finding a fault in plain lines on a terminal or by machine lines, the list of
 * kept cases, and what a vehicle holds. It drives cases and shows them; it works out nothing.
 * Standard output carries the conversation alone.
 */
package loopwright.cli;
