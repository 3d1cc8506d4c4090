/**
 * First power and what is proven since: circuits and grounds, in an order, with what a healthy
 * vehicle reads at each step; kept in a journal of proofs for each vehicle.
 */
package loopwright.casework.prove;
