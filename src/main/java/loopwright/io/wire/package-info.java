/**
 * The machine conversation, line by line: bounded reading of lines, what a line asks for, and the
 * lines that answer. Shapes that the case journal shares are here too. The contract is the schema
 * {@code schema/find-lines-1.schema.json}.
 */
package loopwright.io.wire;
