/** The kept cases. */
package loopwright.ui.cases;
