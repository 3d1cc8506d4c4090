/**
 * A vehicle as tables of text cells: what stands in a cell, and the {@link
 * loopwright.casework.edit.Edit} that a text typed into it makes. No toolkit; what a cell accepts
 * is decided here alone.
 */
package loopwright.casework.table;
