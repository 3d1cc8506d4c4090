package loopwright.casework.sheet;

import java.util.List;
import java.util.regex.Pattern;

/** The columns of a wire list. */
public enum WireColumn implements SheetColumn {
  /** The wire's short name, unique in the vehicle. */
  WIRE(
      "wire",
      "id",
      "wire id",
      "no",
      "nr",
      "wire no",
      "wire nr",
      "number",
      "wire number",
      "cable",
      "cable no",
      "item"),
  /** Wire or strap. */
  KIND("kind", "type", "wire or strap"),
  /** What a person calls it. */
  NAME("name", "wire name", "description", "function", "what for", "purpose"),
  /** What is written on it on the vehicle. */
  LABEL("label", "wire label", "marking", "mark", "marked", "printed", "tag", "sleeve"),
  /** Part one end lies on, or part and terminal in one. */
  FROM("from", "from part", "start", "start part", "end a", "end 1", "source", "from end"),
  /** Terminal of that part, where it has a column of its own. */
  FROM_TERMINAL(
      "from terminal",
      "from pin",
      "from cavity",
      "start terminal",
      "start pin",
      "pin a",
      "terminal a",
      "terminal 1",
      "pin 1"),
  /** Part the other end lies on, or part and terminal in one. */
  TO("to", "to part", "end", "end part", "end b", "end 2", "destination", "to end", "goes to"),
  /** Terminal of that part, where it has a column of its own. */
  TO_TERMINAL(
      "to terminal",
      "to pin",
      "to cavity",
      "end terminal",
      "end pin",
      "pin b",
      "terminal b",
      "terminal 2",
      "pin 2"),
  /** Conductor size. */
  SIZE(
      "size",
      "wire size",
      "gauge",
      "wire gauge",
      "awg",
      "mm2",
      "sq mm",
      "cross section",
      "section",
      "csa",
      "area",
      "conductor"),
  /** Length. */
  LENGTH("length", "wire length", "len", "metres", "meters", "feet", "inches", "run", "how long"),
  /** Colour as on the vehicle. */
  COLOUR("colour", "color", "wire colour", "wire color", "col", "insulation"),
  /** The loom it runs in. */
  LOOM("loom", "harness", "bundle", "wiring loom"),
  /** Where it sits, in words. */
  WHERE("where", "place", "location", "route", "routing", "position"),
  /** Resistance of one end contact in ohms. */
  END_OHMS("end ohms", "end resistance", "end contact"),
  /** Working time to take it out, in minutes. */
  APART("apart minutes", "apart", "minutes apart"),
  /** Working time to replace it, in minutes. */
  SWAP("swap minutes", "swap", "minutes to swap", "swap time"),
  /** The part behind which the wire stands in the vehicle's own list. */
  AFTER("listed after"),
  /** Remarks. A wire holds none, so they are counted and left out. */
  NOTE("note", "notes", "remark", "remarks", "comment", "comments");

  private static final Pattern COLOURS =
      Pattern.compile(
          "(?:(?:black|brown|red|orange|yellow|green|blue|violet|purple|gr[ae]y|white|pink)"
              + "[ /-]?)+",
          Pattern.CASE_INSENSITIVE);

  private final List<String> headings;

  WireColumn(String... headings) {
    this.headings = List.of(headings);
  }

  @Override
  public List<String> headings() {
    return headings;
  }

  @Override
  public boolean couldBe(String cell) {
    return switch (this) {
      case WIRE -> cell.matches("(?i)w(?:ire)?[-_ ]?\\d{1,5}\\p{L}?");
      case FROM, TO -> Headings.isEnd(cell);
      case SIZE -> Headings.isSize(cell);
      case LENGTH -> Headings.isLength(cell);
      case COLOUR -> COLOURS.matcher(cell).matches();
      default -> false;
    };
  }
}
