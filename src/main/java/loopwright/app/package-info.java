/** Main, wiring and settings. The only room that sees everything. */
package loopwright.app;
