/**
 * Files: vehicles, knowledge tables, meters. The only room that knows Jackson. Files are data:
 * nothing in them names a class or is run.
 */
package loopwright.io;
