/** Lists that people keep in a spreadsheet, as files. What they say is read in casework. */
package loopwright.io.sheet;
