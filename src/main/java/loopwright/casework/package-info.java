/**
 * The use cases and their state: finding a fault, one reading at a time. Every front end (window,
 * terminal, machine lines) drives the same {@link loopwright.casework.FindCase} and shows its
 * {@link loopwright.casework.CaseView}; nothing on a screen is worked out by the screen. No
 * toolkit, no JSON.
 */
package loopwright.casework;
