/** Where the window opens: what somebody may have come for, and what was begun before. */
package loopwright.ui.home;
