/**
 * Checks of the plan itself, before anything is bought or powered: sizes, protection, returns,
 * contacts, suppression. It works out figures and their limits; what a figure beyond its limit
 * means is said by rules.
 */
package loopwright.paper;
