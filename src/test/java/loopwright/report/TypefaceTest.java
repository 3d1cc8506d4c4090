package loopwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import loopwright.casework.Phrases;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names in any script on paper. */
class TypefaceTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  private static Paper paper(String name) {
    Paper paper = new Paper(PageSize.A4, name, "Making list", "1 June 2024", PHRASES);
    paper.title(name);
    paper.heading(name);
    paper.labelled("G4", name);
    paper.paragraph((name + " ").repeat(60).strip());
    return paper;
  }

  private static String text(Paper paper) {
    return String.join(" ", Pages.texts(paper.pdf())).replaceAll("\\s+", " ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "second tractor",
        "Żółty wóz, déjà vu, Ďáblík, Søring, İğne",
        "Đèn trước bên trái",
        "Πυροσβεστικό όχημα",
        "Акумулятор 12 В, щиток",
        "Մարտկոց",
        "აკუმულატორი"
      })
  void isPrintedAsItIs(String name) {
    Paper paper = paper(name);
    Pages.wellLaidOut(paper.finished(), 9);
    Pages.blackOnly(paper.pdf());
    assertThat(text(paper))
        .contains("G4 " + name)
        .doesNotContain("?")
        .doesNotContain(PHRASES.say("print.script"));
  }

  @ParameterizedTest
  @CsvSource({
    "بطارية السيارة 2, ⟦Arabic⟧ 2",
    "'电池, 左', '⟦Han⟧, ⟦Han⟧'",
    "バッテリー端子, ⟦Katakana⟧⟦Han⟧",
    "배터리, ⟦Hangul⟧",
    "बैटरी, ⟦Devanagari⟧",
    "סוללה, ⟦Hebrew⟧",
    "F3 🚒, F3 ?"
  })
  void isNamedByItsScriptWhereItCannotBePrinted(String name, String printed) {
    Paper paper = paper(name);
    Pages.wellLaidOut(paper.finished(), 9);
    assertThat(text(paper)).contains("G4 " + printed);
    assertThat(text(paper).contains(PHRASES.say("print.script"))).isEqualTo(name.charAt(0) > 'F');
  }

  /** What is plain stays so, and both fonts' letters count for the width. */
  @Test
  void isMeasuredAsItIsPrinted() {
    String mixed = "F3 Щ 电池 é";
    for (Typeface face : Typeface.values()) {
      String plain = face.plain(mixed);
      assertThat(plain).isEqualTo("F3 Щ ⟦Han⟧ é");
      assertThat(face.plain(plain)).isEqualTo(plain);
      double apart = plain.chars().mapToDouble(c -> face.width(String.valueOf((char) c), 10)).sum();
      assertThat(face.width(plain, 10)).isBetween(apart - 1e-9, apart + 1e-9);
      assertThat(face.runs(plain).stream().map(Typeface.Run::text).reduce("", String::concat))
          .isEqualTo(plain);
      assertThat(face.runs(plain)).hasSizeGreaterThan(2);
    }
  }
}
