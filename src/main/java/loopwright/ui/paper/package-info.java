/** The Paper check place: what is wrong with the plan, worst first, and the way to mend it. */
package loopwright.ui.paper;
