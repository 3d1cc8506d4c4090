/**
 * The desktop window. Each screen has a view (built in code) and a view model that knows no scene;
 * what a screen shows comes from {@link loopwright.casework.CaseView} and is not worked out here.
 */
package loopwright.ui;
