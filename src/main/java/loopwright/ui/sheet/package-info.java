/** Wire lists and pinouts from a spreadsheet and back, as pages of the Wiring place. */
package loopwright.ui.sheet;
