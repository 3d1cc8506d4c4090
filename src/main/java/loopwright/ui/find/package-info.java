/** Finding a fault: the complaint, the next check, what is known, what was done. */
package loopwright.ui.find;
