/** Print and lists: what of a vehicle goes on paper or into a spreadsheet, and where to. */
package loopwright.ui.lists;
