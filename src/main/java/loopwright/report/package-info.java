/**
 * What is printed: lists, labels, circuit drawings, findings, as PDF in black on white. A page is
 * laid out first ({@link loopwright.report.Leaf}) and written afterwards, so that tests see where
 * everything stands. Lengths are points of 1/72 inch, from the top left corner.
 */
package loopwright.report;
