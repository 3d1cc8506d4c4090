package loopwright.casework;

/**
 * What was told besides readings and can be taken back.
 *
 * @param number its number, from 1; those taken back keep theirs
 * @param after number of the reading taken last before it; 0 for none
 * @param deed what was told
 * @param words the same in words, for instance "mended: beacon ground G4"
 */
public record DeedView(int number, int after, CaseEvent.Deed deed, String words) {}
