/** Practice in the window: choosing a drill, playing it, its debrief. */
package loopwright.ui.practise;
