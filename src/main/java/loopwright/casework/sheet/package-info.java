/**
 * Lists that people keep in a spreadsheet, in and out: the wires of a vehicle and the pinout of its
 * connectors. Such lists are untidy, so which column holds what is guessed and can be overruled,
 * what was understood is shown before anything changes, and everything that was not is listed by
 * line and column. A list is taken over whole or not at all.
 */
package loopwright.casework.sheet;
