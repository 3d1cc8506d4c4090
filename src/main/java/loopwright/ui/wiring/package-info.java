/**
 * Wiring: the vehicle as tables that are typed into, with the drawing beside them; undo, find and
 * files. Other screens take the place for a while as {@link loopwright.ui.wiring.WiringPage}s.
 */
package loopwright.ui.wiring;
