/**
 * Practice: a drill hides a fault that a code settles; the learner chooses every check, and is told
 * at the end how the way taken stands beside the best one.
 */
package loopwright.casework.practise;
