package loopwright.casework.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loopwright.io.VehicleFile;
import loopwright.model.Estimate;
import loopwright.model.Part;
import loopwright.model.PartSpec;
import loopwright.model.Said;
import loopwright.model.Vehicle;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Hand-kept wire lists, each with what must be understood of it and what must not. */
class UntidySheetsTest {
  /**
   * One list.
   *
   * @param rows "line effect wire: from to size metres colour", or the changes of a known wire
   * @param defects "line,column words of the message"
   */
  private record Case(String title, String text, List<String> rows, List<String> defects) {
    @Override
    public String toString() {
      return title;
    }
  }

  private static Case good(String title, String text, String... rows) {
    return new Case(title, text, List.of(rows), List.of());
  }

  private static Case bad(String title, String text, List<String> rows, String... defects) {
    return new Case(title, text, rows, List.of(defects));
  }

  static Stream<Case> lists() {
    return Stream.of(
        good(
            "plain, comma separated",
            "wire,from,to,size,length,colour\nW7,F3.load,L1.in,16 AWG,1.5 m,blue\n",
            "2 new W7: F3.load L1.in 16 AWG 1.5 blue"),
        good(
            "byte order mark, semicolons, decimal comma, CRLF, empty cells behind",
            "\uFEFFNo;From;To;mm²;Length;Color;;\r\nW7;F3.load;L1.in;1,5;0,75;blue;;\r\n",
            "2 new W7: F3.load L1.in 1.5 mm2 0.75 blue"),
        good(
            "tabs, part and terminal in columns of their own, any case",
            "Wire No\tFrom part\tFrom pin\tTo part\tTo pin\tAWG\tLength (cm)\n"
                + "W7\tf3\tLOAD\tl1\tIN\t18\t150\n",
            "2 new W7: F3.load L1.in 18 AWG 1.5 "),
        good(
            "a title, remarks, empty lines, a separator's hint",
            "sep=;\nWire list of the hose trailer;;;;\n\n// by hand\n# still to do: rear\n"
                + "wire;from;to;gauge;length ft\n\n;;;;\nW7;F3.load;L1.in;#14;5\n",
            "9 new W7: F3.load L1.in 14 AWG 1.524 "),
        good(
            "quoted cells with separators and quotes in them",
            "wire,name,from,to,size,length\n"
                + "\"W7\",\"work lamp, \"\"second\"\"\",F3.load,L1.in,\"1,5 mm2\",\"2,5 m\"\n",
            "2 new W7: F3.load L1.in 1.5 mm2 2.5 "),
        good(
            "a line break in a quoted cell moves no line number",
            "wire,name,from,to,size,length\nW7,\"two\nlines\",F3.load,L1.in,16 AWG,1 m\n"
                + "W8,,F3.load,L1.in,16 AWG,1 m\n",
            "2 new W7: F3.load L1.in 16 AWG 1 ",
            "4 new W8: F3.load L1.in 16 AWG 1 "),
        good(
            "lengths that say they are not exact stay spreads",
            "wire;from;to;size;length\nW7;F3.load;L1.in;16 AWG;about 2 m\n"
                + "W8;F3.load;L1.in;16 AWG;1-2 m\nW9;F3.load;L1.in;16 AWG;1.5 ± 0.2 m\n"
                + "W10;F3.load;L1.in;16 AWG;2 (1,5 to 3) m\nW11;F3.load;L1.in;16 AWG;50 cm – 1 m\n"
                + "W12;F3.load;L1.in;16 AWG;~ 10 ft\nW13;F3.load;L1.in;16 AWG;2 m +/- 10 %\n",
            "2 new W7: F3.load L1.in 16 AWG 1.4<2<2.6 ",
            "3 new W8: F3.load L1.in 16 AWG 1<1.5<2 ",
            "4 new W9: F3.load L1.in 16 AWG 1.3<1.5<1.7 ",
            "5 new W10: F3.load L1.in 16 AWG 1.5<2<3 ",
            "6 new W11: F3.load L1.in 16 AWG 0.5<0.75<1 ",
            "7 new W12: F3.load L1.in 16 AWG 2.1336<3.048<3.9624 ",
            "8 new W13: F3.load L1.in 16 AWG 1.8<2<2.2 "),
        good(
            "feet and inches, inches in the middle of a bare cell",
            "wire,from,to,size,length\nW7,F3.load,L1.in,16 ga,4' 6\"\nW8,F3.load,L1.in,AWG 16,18\"\n"
                + "W9,F3.load,L1.in,2/0,4 ft 6 in\n",
            "2 new W7: F3.load L1.in 16 AWG 1.3716 ",
            "3 new W8: F3.load L1.in 16 AWG 0.4572 ",
            "4 new W9: F3.load L1.in 2/0 AWG 1.3716 "),
        good(
            "misspelt headings, and a column nobody knows",
            "Wire;Fron;To;Guage;Lenght m;Colur;Bought\nW7;F3.load;L1.in;16 AWG;1;blue;2019\n",
            "2 new W7: F3.load L1.in 16 AWG 1 blue"),
        good(
            "known wires: one changed, one not, in any order",
            "wire,from,to,colour\nW5,L1.out,FRAME.metal,brown\nW1,BATT.pos,F3.feed,red\n",
            "2 changed W5: colour black>brown",
            "3 unchanged W1"),
        good(
            "no names: known by their ends, else the next free name",
            "from,to,size,length\nL1.out,FRAME,16 AWG,30 cm\nF3:load,L1 in,16 AWG,1 m\n",
            "2 unchanged W5",
            "3 new W6: F3.load L1.in 16 AWG 1 "),
        bad(
            "unknown part and unknown terminal, each in its own column",
            "wire;from;from terminal;to;to terminal;size;length\n"
                + "W7;F9;load;L1;in;16 AWG;1\nW8;F3;lod;L1;in;16 AWG;1\nW9;F3;load;L1;in;16 AWG;1\n",
            List.of("4 new W9: F3.load L1.in 16 AWG 1 "),
            "2,2 F9",
            "3,3 did you mean F3.load"),
        bad(
            "sizes that are none, or may be either",
            "wire,from,to,size,length\nW7,F3.load,L1.in,16,1 m\nW8,F3.load,L1.in,99 AWG,1 m\n"
                + "W9,F3.load,L1.in,thick,1 m\nW10,F3.load,L1.in,,1 m\n",
            List.of(),
            "2,4 a bare 16 may be either",
            "3,4 99 AWG",
            "4,4 thick",
            "5,4 size is missing"),
        bad(
            "lengths that can't be",
            "wire;from;to;size;length\nW7;F3.load;L1.in;16 AWG;0\nW8;F3.load;L1.in;16 AWG;-1 m\n"
                + "W9;F3.load;L1.in;16 AWG;long\nW10;F3.load;L1.in;16 AWG;1,200 mm\n"
                + "W11;F3.load;L1.in;16 AWG;3-1 m\nW12;F3.load;L1.in;16 AWG;5 km\n"
                + "W13;F3.load;L1.in;16 AWG;400 m\n",
            List.of(),
            "2,5 metres is 0 m, must be more than 0",
            "3,5 metres is -1 m",
            "4,5 long",
            "5,5 a comma before three digits",
            "6,5 3-1 m",
            "7,5 5 km",
            "8,5 at most 100 m"),
        bad(
            "one wire on two lines, a wire named like a fuse, a name with a space",
            "wire,from,to,size,length\nW7,F3.load,L1.in,16 AWG,1 m\nW7,S1.in,L1.x,16 AWG,1 m\n"
                + "F3,F3.load,L1.in,16 AWG,zero\nW 8,F3.load,L1.in,16 AWG,1 m\n",
            List.of("2 new W7: F3.load L1.in 16 AWG 1 "),
            "3,1 stands on line 2 already",
            "3,3 L1.x",
            "4,1 F3 is a fuse",
            "4,5 zero",
            "5,1 without spaces"),
        bad(
            "both ends on one terminal, an end missing, a terminal missing, no terminal at all",
            "wire,from,to,size,length\nW7,F3.load,F3.load,16 AWG,1 m\nW8,,L1.x,16 AWG,1 m\n"
                + "W9,BATT,L1.in,16 AWG,1 m\nW10,F3.load,somewhere,16 AWG,1 m\n",
            List.of(),
            "2,3 both ends lie on F3.load",
            "3,2 from is missing",
            "3,3 L1.x",
            "4,2 one of its terminals pos, neg",
            "5,3 somewhere"),
        bad(
            "a decimal comma in a comma-separated list makes a cell too many",
            "wire,from,to,size,length\nW7,F3.load,L1.in,16 AWG,1,5\nW8,F3.load,L1.in,16 AWG,1.5\n",
            List.of("3 new W8: F3.load L1.in 16 AWG 1.5 "),
            "2,6 more cells than there are headings"),
        bad(
            "a quote that never closes spoils its own line alone",
            "wire,name,from,to,size,length\nW7,plain,F3.load,L1.in,16 AWG,1 m\n"
                + "W8,\"open,F3.load,L1.in,16 AWG,1 m\nW9,plain,F3.load,L1.in,16 AWG,1 m\n",
            List.of("2 new W7: F3.load L1.in 16 AWG 1 ", "4 new W9: F3.load L1.in 16 AWG 1 "),
            "3,2 never closes"),
        bad(
            "several defects in one row are all listed",
            "wire;kind;from;to;size;length;end ohms;swap minutes\n"
                + "W7;hose;F9.load;L1.inn;fat;far;few;soon\n",
            List.of(),
            "2,2 hose",
            "2,3 F9",
            "2,4 inn",
            "2,5 fat",
            "2,6 far",
            "2,7 few",
            "2,8 soon"),
        bad(
            "no heading says where the wires go",
            "a;b;c\nW7;F3.load;L1.in\n",
            List.of(),
            "0,0 understood as 'from'",
            "0,0 understood as 'to'"),
        bad("headings without rows", "wire,from,to\n", List.of(), "1,0 no rows"),
        bad("nothing at all", "\uFEFF\r\n\r\n", List.of(), "0,0 is empty"),
        bad(
            "control characters, text behind a closing quote",
            "wire,name,from,to,size,length\nW7,a\u0007b,F3.load,L1.in,16 AWG,1 m\n"
                + "W8,\"a\"b,F3.load,L1.in,16 AWG,1 m\n",
            List.of(),
            "2,2 control characters",
            "3,2 behind its closing quote"));
  }

  @ParameterizedTest
  @MethodSource("lists")
  void whatIsUnderstoodAndWhatIsNot(Case list) {
    Vehicle before = Trailer.vehicle();
    WireSheet sheet = WireSheet.read(list.text(), "list.csv");
    WirePreview preview = sheet.preview(before, sheet.guess());

    assertThat(preview.rows().stream().map(UntidySheetsTest::told).toList()).isEqualTo(list.rows());
    List<String> messages = preview.defects().stream().map(CellDefect::message).toList();
    assertThat(preview.defects()).as("%s", messages).hasSameSizeAs(list.defects());
    for (int i = 0; i < list.defects().size(); i++) {
      String[] expected = list.defects().get(i).split(" ", 2);
      CellDefect defect = preview.defects().get(i);
      assertThat(defect.line() + "," + defect.column()).as("%s", messages).isEqualTo(expected[0]);
      assertThat(defect.message()).contains(expected[1]).contains("list.csv");
    }
    assertThat(before).as("nothing is changed by looking").isEqualTo(Trailer.vehicle());
    if (list.defects().isEmpty()) {
      wholly(preview, before);
    } else {
      assertThat(preview.applied()).as("never half").isEmpty();
    }
  }

  /** Every row is in the vehicle as shown, all else is as before, and its file can be read. */
  private static void wholly(WirePreview preview, Vehicle before) {
    Vehicle after = preview.applied().orElseThrow();
    List<Part> listed = preview.rows().stream().map(WirePreview.Row::wire).toList();
    assertThat(after.parts()).containsAll(listed);
    List<Part> others = new ArrayList<>(before.parts());
    others.removeIf(p -> listed.stream().anyMatch(w -> w.id().equals(p.id())));
    assertThat(after.parts()).containsAll(others);
    assertThat(after.parts()).hasSize(others.size() + listed.size());
    assertThat(VehicleFile.read(VehicleFile.text(after), "after.json").orThrow()).isEqualTo(after);
  }

  private static String told(WirePreview.Row row) {
    String head = row.line() + " " + row.effect().word() + " " + row.wire().id();
    PartSpec.Wire wire = (PartSpec.Wire) row.wire().spec();
    return switch (row.effect()) {
      case NEW ->
          head
              + ": "
              + String.join(
                  " ",
                  wire.from().toString(),
                  wire.to().toString(),
                  wire.size().toString(),
                  told(wire.metres()),
                  wire.colour());
      case CHANGED ->
          head
              + ": "
              + row.changes().stream()
                  .map(c -> c.column().word() + " " + c.before() + ">" + c.after())
                  .collect(Collectors.joining("; "));
      case UNCHANGED -> head;
    };
  }

  private static String told(Estimate metres) {
    return metres
        .limits()
        .map(
            s ->
                Said.number(s.low())
                    + "<"
                    + Said.number(metres.about())
                    + "<"
                    + Said.number(s.high()))
        .orElse(Said.number(metres.about()));
  }
}
