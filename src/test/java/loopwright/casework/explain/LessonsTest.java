package loopwright.casework.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.TreeSet;
import loopwright.casework.LoopView;
import loopwright.casework.Phrases;
import loopwright.casework.Problem;
import loopwright.evidence.Bench;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The figures of each page against Ohm's law by hand. All values here are the board's own: 12.6 V
 * behind 0.01 ohm, 0.01 ohm for a fuse, switch or relay contact, 0.001 ohm for a sound joint. Every
 * node leaks through a gigaohm, which the tolerances allow for.
 */
class LessonsTest {
  private static final double BATTERY = 12.6;
  private static final ExplainDesk DESK =
      new ExplainDesk(Bench.KNOWLEDGE, new Phrases(Locale.ENGLISH));

  private static Explained open(String id, String... set) throws Problem {
    return DESK.open(id, settings(set));
  }

  private static Map<String, String> settings(String... set) {
    Map<String, String> stops = new java.util.HashMap<>();
    for (String one : set) {
      stops.put(one.substring(0, one.indexOf('=')), one.substring(one.indexOf('=') + 1));
    }
    return stops;
  }

  private static Figure figure(Explained page, String id) {
    return page.figures().stream().filter(f -> f.id().equals(id)).findFirst().orElseThrow();
  }

  private static double value(Explained page, String id) {
    return figure(page, id).value();
  }

  /** Amperes of a hot 12 V lamp at so many volts: the 0.55th power of them. */
  private static double lampAmps(double watts, double volts) {
    return watts / 12 * Math.pow(volts / 12, 0.55);
  }

  /** Amperes of a lamp behind so many ohms: where its own law and Ohm's meet, by halving. */
  private static double lampBehind(double watts, double ohms) {
    double low = 0;
    double high = BATTERY;
    for (int i = 0; i < 100; i++) {
      double volts = (low + high) / 2;
      if (volts + lampAmps(watts, volts) * ohms > BATTERY) {
        high = volts;
      } else {
        low = volts;
      }
    }
    return lampAmps(watts, low);
  }

  @Test
  void whyALoop() throws Problem {
    // BATT 0.01 -- F1 0.01 -- S1 0.01 -- L1 55 W -- G1 0.001 -- BATT
    double amps = lampBehind(55, 0.031);
    Explained whole = open("loop");
    assertThat(value(whole, "amps")).isEqualTo(amps, within(1e-4));
    assertThat(value(whole, "fuse")).isEqualTo(0.01 * amps, within(1e-5));
    assertThat(value(whole, "switch")).isEqualTo(0.01 * amps, within(1e-5));
    assertThat(value(whole, "lamp")).isEqualTo(BATTERY - 0.031 * amps, within(1e-4));
    assertThat(value(whole, "ground")).isEqualTo(0.001 * amps, within(1e-5));
    for (String gap : List.of("fuse", "switch", "ground")) {
      Explained open = open("loop", "opened=" + gap);
      assertThat(value(open, "amps")).isEqualTo(0, within(1e-6));
      for (String part : List.of("fuse", "switch", "lamp", "ground")) {
        assertThat(value(open, part)).isEqualTo(part.equals(gap) ? BATTERY : 0, within(1e-4));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"0.001", "0.1", "0.5", "1", "5"})
  void voltsToGroundAndVoltsAcross(double ground) throws Problem {
    // BATT 0.01 -- F1 0.01 -- S1 0.01 -- (red) L1 55 W -- (out) G1 -- BATT (black)
    double amps = lampBehind(55, 0.03 + ground);
    String ohms = "ground=" + (ground == Math.rint(ground) ? "" + (int) ground : "" + ground);
    Explained toPost = open("across", ohms);
    assertThat(value(toPost, "amps")).isEqualTo(amps, within(1e-4));
    assertThat(value(toPost, "ground")).isEqualTo(amps * ground, within(1e-3));
    assertThat(value(toPost, "lamp")).isEqualTo(BATTERY - amps * (0.03 + ground), within(1e-3));
    // The display of this range counts hundredths, or thousandths below 2 V.
    assertThat(value(toPost, "reading")).isEqualTo(BATTERY - amps * 0.03, within(0.0051));
    Explained across = open("across", ohms, "black=lamp-out");
    assertThat(value(across, "reading")).isEqualTo(value(across, "lamp"), within(0.0051));
    assertThat(value(open("across", ohms, "red=lamp-out"), "reading"))
        .isEqualTo(amps * ground, within(0.0051));
    assertThat(value(open("across", ohms, "red=lamp-out", "black=lamp-out"), "reading"))
        .isEqualTo(0);
    assertThat(value(open("across", ohms, "red=battery"), "reading"))
        .isEqualTo(BATTERY - amps * 0.01, within(0.0051));
  }

  @ParameterizedTest
  @CsvSource({"0.001", "1", "10", "100"})
  void loadedAndUnloaded(String joint) throws Problem {
    // BATT 0.01 -- F1 0.01 -- C1 -- (red) [L1 55 W -- G1 0.001] -- BATT (black)
    Explained out = open("loaded", "joint=" + joint, "bulb=out");
    assertThat(value(out, "reading")).isEqualTo(BATTERY, within(0.0051));
    assertThat(value(out, "amps")).isZero();
    double ohms = Double.parseDouble(joint);
    double amps = lampBehind(55, 0.021 + ohms);
    double cold = 144.0 / 55 / 13;
    // At the dimmest the filament is cold, and its cold resistance rules.
    amps = Math.min(amps, BATTERY / (0.021 + ohms + cold));
    Explained in = open("loaded", "joint=" + joint, "bulb=in");
    assertThat(value(in, "amps")).isEqualTo(amps, within(1e-3));
    assertThat(value(in, "lost")).isEqualTo(amps * ohms, within(2e-2));
    assertThat(value(in, "reading")).isEqualTo(BATTERY - amps * (0.02 + ohms), within(0.02));
  }

  @ParameterizedTest
  @CsvSource({"0.001", "0.05", "0.1", "0.2", "0.5"})
  void whatOhmsCantTell(String joint) throws Problem {
    // BATT 0.01 -- F1 0.01 -- S1 0.01 -- (red) C1 (black) -- L1 55 W -- G1 0.001 -- BATT
    double ohms = Double.parseDouble(joint);
    double amps = lampBehind(55, 0.031 + ohms);
    Explained page = open("ohms", "joint=" + joint);
    assertThat(value(page, "amps")).isEqualTo(amps, within(1e-4));
    assertThat(value(page, "lost")).isEqualTo(ohms * amps, within(1e-4));
    // Leads of 0.3 ohm, shown in tenths.
    assertThat(value(page, "joint")).isEqualTo(0.3 + ohms, within(0.051));
    assertThat(value(page, "cold")).isEqualTo(0.3 + 144.0 / 55 / 13, within(0.051));
    double volts = BATTERY - amps * (0.031 + ohms);
    assertThat(value(page, "hot")).isEqualTo(volts / amps, within(1e-3));
  }

  @ParameterizedTest
  @CsvSource({"10000000,basic,1e7", "1000000,basic,1e7", "100000,better,1e7", "1000000,old,1e6"})
  void ghostVolts(String damp, String meter, double input) throws Problem {
    // BATT -- F1 -- S1 (damp) -- (red) [L1 21 W -- G1] -- BATT (black)
    assertThat(Bench.KNOWLEDGE.meter(meter).orElseThrow().inputOhms()).isEqualTo(input);
    double ohms = Double.parseDouble(damp);
    Explained ghost = open("ghost", "damp=" + damp, "meter=" + meter, "bulb=out");
    assertThat(value(ghost, "reading")).isEqualTo(BATTERY * input / (input + ohms), within(0.06));
    // The leak of a gigaohm takes a hundredth behind ten million ohms.
    assertThat(value(ghost, "standing")).isEqualTo(BATTERY * 1e9 / (1e9 + ohms), within(0.02));
    assertThat(value(ghost, "input")).isEqualTo(input);
    Explained bulb = open("ghost", "damp=" + damp, "meter=" + meter, "bulb=in");
    assertThat(value(bulb, "reading")).isEqualTo(0, within(2e-4));
    assertThat(value(open("ghost", "damp=dry", "meter=" + meter), "reading"))
        .isEqualTo(0, within(2e-4));
  }

  @ParameterizedTest
  @CsvSource({
    "one,none,whole",
    "two,none,whole",
    "three,none,blown",
    "one,5,whole",
    "two,5,whole",
    "one,0.1,blown"
  })
  void whyAFuseBlows(String loads, String chafe, String state) throws Problem {
    // BATT 0.01 -- F1 0.01 -- (L1 || L2 || L3 || chafed place) -- BATT; a heater is 12.6 V / 5 A
    double siemens = List.of("one", "two", "three").indexOf(loads) + 1;
    siemens *= 5 / BATTERY;
    siemens += chafe.equals("none") ? 0 : 1 / Double.parseDouble(chafe);
    double wanted = BATTERY / (0.02 + 1 / siemens);
    Explained page = open("fuse", "loads=" + loads, "chafe=" + chafe);
    assertThat(value(page, "wanted")).isEqualTo(wanted, within(1e-3 * wanted));
    assertThat(value(page, "opens")).isEqualTo(12.5, within(1e-9));
    assertThat(wanted > 12.5).isEqualTo(state.equals("blown"));
    assertThat(figure(page, "state").text()).isEqualTo(state);
    assertThat(value(page, "amps"))
        .isEqualTo(state.equals("blown") ? 0 : wanted, within(1e-3 * wanted));
    assertThat(value(page, "reading"))
        .isEqualTo(state.equals("blown") ? 0 : BATTERY - 0.02 * wanted, within(0.0051));
  }

  @ParameterizedTest
  @CsvSource({"0.001", "50", "100", "1000"})
  void relays(String ground) throws Problem {
    // BATT 0.01 -- F1 0.01 -- +-- S1 0.01 -- 86 coil 85 ohm 85 -- G2 -- BATT
    //                         +-- 30 contact 0.01 87 -- L1 55 W -- G1 0.001 -- BATT
    double coil = BATTERY * 85 / (85 + Double.parseDouble(ground));
    boolean pulled = coil > 6.5;
    Explained page = open("relay", "coil-ground=" + ground);
    assertThat(figure(page, "state").text()).isEqualTo(pulled ? "pulled in" : "at rest");
    // The lamp's amperes take a little more of all volts.
    assertThat(value(page, "coil")).isEqualTo(coil, within(0.12));
    assertThat(value(page, "85")).isEqualTo(BATTERY - coil, within(0.12));
    assertThat(value(page, "86")).isEqualTo(BATTERY, within(0.12));
    assertThat(value(page, "30")).isEqualTo(BATTERY, within(0.12));
    assertThat(value(page, "87")).isEqualTo(pulled ? BATTERY : 0, within(0.17));
    assertThat(value(page, "87a")).isEqualTo(pulled ? 0 : BATTERY, within(0.12));
    assertThat(value(page, "amps")).isEqualTo(pulled ? lampBehind(55, 0.031) : 0, within(0.01));
    Explained off = open("relay", "coil-ground=" + ground, "switch=off");
    assertThat(figure(off, "state").text()).isEqualTo("at rest");
    assertThat(value(off, "86")).isEqualTo(0, within(1e-4));
  }

  @Test
  void diodesTheRightWayRound() throws Problem {
    // BATT 0.01 -- F1 5 A 0.01 -- S1 0.01 -- D1 0.65 V 0.05 -- (V1 6.3 ohm || D2 backwards) -- BATT
    double amps = (BATTERY - 0.65) / (0.03 + 0.05 + 6.3);
    Explained right = open("diode");
    assertThat(value(right, "amps")).isEqualTo(amps, within(1e-4));
    assertThat(value(right, "lost")).isEqualTo(0.65 + 0.05 * amps, within(1e-4));
    assertThat(value(right, "reading")).isEqualTo(6.3 * amps, within(0.0051));
    assertThat(figure(right, "state").text()).isEqualTo("whole");
    // 3.2 V behind 2400 ohm through the junction.
    double test = 0.65 + 0.05 * (3.2 - 0.65) / 2400.05;
    assertThat(value(right, "forwards")).isEqualTo(test, within(0.00051));
    assertThat(figure(right, "backwards").text()).isEqualTo("OL");

    Explained blocks = open("diode", "inline=wrong");
    assertThat(value(blocks, "amps")).isEqualTo(0, within(1e-6));
    assertThat(value(blocks, "lost")).isEqualTo(BATTERY, within(1e-3));
    assertThat(figure(blocks, "state").text()).isEqualTo("whole");

    // (12.6 - 1.3) / 0.13 = 87 A: the fuse of 5 A goes.
    Explained shorted = open("diode", "across=wrong");
    assertThat(figure(shorted, "state").text()).isEqualTo("blown");
    assertThat(value(shorted, "amps")).isEqualTo(0, within(1e-6));
    assertThat(figure(open("diode", "across=wrong", "inline=wrong"), "state").text())
        .isEqualTo("whole");
  }

  @ParameterizedTest
  @CsvSource({"0.001", "0.005", "0.02", "0.1"})
  void groundsAndMilliohms(String strap) throws Problem {
    // BATT 0.01 -- H1 12.6 V / 60 A = 0.21 ohm, or E1 31.5 ohm -- (red) G1 (black) -- BATT
    double ohms = Double.parseDouble(strap);
    double amps = BATTERY / (0.01 + 0.21 + ohms);
    Explained page = open("ground", "strap=" + strap);
    assertThat(value(page, "amps")).isEqualTo(amps, within(1e-3));
    assertThat(value(page, "reading")).isEqualTo(amps * ohms, within(0.0051));
    assertThat(value(page, "ohms")).isEqualTo(ohms, within(1e-6));
    assertThat(value(page, "meter-ohms")).isEqualTo(0.3 + ohms, within(0.051));
    double small = BATTERY / (0.01 + 31.5 + ohms);
    Explained lamp = open("ground", "strap=" + strap, "load=lamp");
    assertThat(value(lamp, "amps")).isEqualTo(small, within(1e-4));
    // Tenths of millivolts.
    assertThat(value(lamp, "reading")).isEqualTo(small * ohms, within(0.000051));
  }

  @ParameterizedTest
  @CsvSource({"10,basic,1e7", "10000,better,1e7", "100000,basic,1e7", "1000000,old,1e6"})
  void theMetersOwnErrors(String behind, String meter, double input) throws Problem {
    // BATT -- F1 -- R1 -- (red) E1 1 Mohm, the meter beside it -- BATT (black)
    double ohms = Double.parseDouble(behind);
    double standing = BATTERY * 1e6 / (1e6 + ohms);
    double both = 1 / (1e-6 + 1 / input);
    Explained page = open("meter", "behind=" + behind, "meter=" + meter);
    assertThat(value(page, "standing")).isEqualTo(standing, within(0.01));
    double reading = value(page, "reading");
    assertThat(reading).isEqualTo(BATTERY * both / (both + ohms), within(0.06));
    assertThat(value(page, "least")).isEqualTo(reading - value(page, "error"), within(1e-9));
    assertThat(value(page, "most")).isEqualTo(reading + value(page, "error"), within(1e-9));
    if (meter.equals("basic")) {
      // 0.5 % and 2 digits of 10 mV.
      assertThat(value(page, "error")).isEqualTo(reading * 0.005 + 0.02, within(1e-9));
    }
  }

  @ParameterizedTest
  @CsvSource({
    // All before red dead: the volts of the battery; else none. Left on average: (n n + m m) / 5.
    "fuse-out,fuse,0,1,3.4",
    "fuse-out,joint,12.6,4,3.4",
    "switch-out,switch,0,2,2.6",
    "switch-out,bulb,12.6,3,2.6",
    "lamp-in,joint,0,3,2.6",
    "lamp-in,ground,12.6,2,2.6",
    "lamp-out,bulb,0,4,3.4",
    "lamp-out,ground,12.6,1,3.4"
  })
  void whereToMeasureNext(String red, String opened, double volts, double fit, double mean)
      throws Problem {
    Explained page = open("halve", "red=" + red, "opened=" + opened);
    assertThat(value(page, "reading")).isEqualTo(volts, within(0.01));
    assertThat(value(page, "fit")).isEqualTo(fit);
    assertThat(value(page, "mean")).isEqualTo(mean, within(1e-9));
    assertThat(value(page, "all")).isEqualTo(5);
    assertThat(figure(page, "which").text().split(", ")).hasSize((int) fit);
  }

  @Test
  void aLoopWithNothingOpenFitsNoOpenPiece() throws Problem {
    // 4.68 A through the ground's 0.001 ohm: the meter tells 4.7 mV from none.
    Explained whole = open("halve", "red=lamp-out", "opened=nowhere");
    assertThat(value(whole, "reading")).isEqualTo(lampBehind(55, 0.032) * 0.001, within(1e-4));
    assertThat(value(whole, "fit")).isZero();
    assertThat(figure(whole, "which").text()).isEqualTo("-");
  }

  @Test
  void everyStopOfEveryPageIsToldWithoutGaps() throws Problem {
    for (ExplainDesk.Entry entry : DESK.find("")) {
      List<Map<String, String>> all = new ArrayList<>(List.of(Map.of()));
      for (Explained.Moved control : DESK.open(entry.id(), Map.of()).controls()) {
        List<Map<String, String>> more = new ArrayList<>();
        for (Map<String, String> stops : all) {
          for (Explained.Stop stop : control.stops()) {
            Map<String, String> longer = new java.util.HashMap<>(stops);
            longer.put(control.id(), stop.id());
            more.add(longer);
          }
        }
        all = more;
      }
      for (Map<String, String> stops : all) {
        Explained page = DESK.open(entry.id(), stops);
        assertThat(page.words() + page.tryThis() + page.title()).doesNotContain("{", "null", "NaN");
        assertThat(page.loop()).as("%s %s", entry.id(), stops).isPresent();
        LoopView loop = page.loop().orElseThrow();
        assertThat(loop.hasStaircase()).isTrue();
        assertThat(page.figures()).allSatisfy(f -> assertThat(f.text()).doesNotContain("NaN"));
      }
    }
  }

  @Test
  void theStaircaseHoldsWhatIsAgainstWhatShouldBe() throws Problem {
    // Only the fault is mended for what should be: the lamp stays on, and the leads where they are.
    LoopView loop = open("ground", "strap=0.1", "load=lamp").loop().orElseThrow();
    LoopView.Stair lug = loop.stairs().get(1);
    assertThat(lug.point().toString()).isEqualTo("G1.lug");
    assertThat(lug.healthy().high()).isEqualTo(BATTERY * 0.001 / 31.511, within(1e-6));
    assertThat(lug.measured().get(0).volts()).isEqualTo(BATTERY * 0.1 / 31.61, within(1e-5));
  }

  @Test
  void noFigureStandsInTheTexts() {
    ResourceBundle bundle = ResourceBundle.getBundle("loopwright.casework.phrases");
    for (String key : new TreeSet<>(bundle.keySet())) {
      if (key.startsWith("explain.")) {
        String text =
            bundle
                .getString(key)
                .replaceAll("\\{\\d+}", "")
                .replaceAll("DIN 72552|\\b(30|85|86|87a?)\\b", "");
        assertThat(text).as(key).doesNotContainPattern("\\d");
      }
    }
  }

  @Test
  void everyPlaceInATextIsThatOfAFigure() throws Problem {
    ResourceBundle bundle = ResourceBundle.getBundle("loopwright.casework.phrases");
    for (ExplainDesk.Entry entry : DESK.find("")) {
      Explained page = open(entry.id());
      String words = bundle.getString("explain." + entry.id() + ".words");
      java.util.regex.Matcher places = java.util.regex.Pattern.compile("\\{(\\d+)}").matcher(words);
      while (places.find()) {
        Figure figure = page.figures().get(Integer.parseInt(places.group(1)));
        assertThat(page.words()).contains(figure.text());
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "loop,open circuit",
    "across,volts to ground",
    "across,voltage drop",
    "loaded,corroded joint",
    "ohms,continuity",
    "ghost,phantom",
    "ghost,floating",
    "fuse,short circuit",
    "relay,87a",
    "relay,din coil",
    "diode,anode",
    "diode,suppression spike",
    "ground,milliohms",
    "ground,earth strap",
    "meter,accuracy",
    "meter,COUNTS",
    "halve,half split"
  })
  void tradeWordsFindTheirPage(String id, String words) {
    assertThat(DESK.find(words)).extracting(ExplainDesk.Entry::id).contains(id).hasSizeLessThan(5);
  }

  @Test
  void whatIsNotThereIsSaid() {
    assertThat(DESK.find("carburettor")).isEmpty();
    assertThatThrownBy(() -> open("carburettor")).hasMessageContaining("one of loop, across");
    assertThatThrownBy(() -> open("loop", "throttle=open")).hasMessageContaining("one of opened");
    assertThatThrownBy(() -> open("loop", "opened=9"))
        .hasMessageContaining("one of nowhere, fuse, switch, ground");
  }
}
