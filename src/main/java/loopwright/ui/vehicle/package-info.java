/** The vehicle: its circuits, its parts and the drawing of a loop. */
package loopwright.ui.vehicle;
