/** A meter that sends its readings: its states, and when a reading is steady enough to count. */
package loopwright.casework.feed;
