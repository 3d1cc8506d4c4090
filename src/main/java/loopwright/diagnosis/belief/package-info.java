/**
 * Belief over several failures at once: which sets of pieces can't all be sound, which sets of
 * failed pieces explain what was seen, and how likely each candidate is. Nothing electrical and no
 * other room: what agrees with what is found out by whoever asks.
 */
package loopwright.diagnosis.belief;
