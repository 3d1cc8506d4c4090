package loopwright.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import loopwright.casework.CaseDesk;
import loopwright.casework.OrderCard;
import loopwright.casework.Phrases;
import loopwright.diagnosis.ComplaintKind;
import loopwright.evidence.Bench;
import org.junit.jupiter.api.Test;

class OrderSheetTest {
  private static final Phrases PHRASES = new Phrases(Locale.ENGLISH);

  @Test
  void oneBlackPageSaysWhereToGoAndHasRoomToWrite() throws Exception {
    OrderCard card =
        Bench.cardDesk()
            .card(
                Bench.vehicle("tractor"),
                new CaseDesk.Complaint("tail", Optional.empty(), ComplaintKind.DEAD));
    for (PageSize size : PageSize.values()) {
      Paper paper = OrderSheet.paper(List.of(card), size, "1 June 2024", PHRASES);
      assertThat(paper.pages()).isEqualTo(1);
      Pages.wellLaidOut(paper.finished(), 9);
      Pages.blackOnly(paper.pdf());
      assertThat(paper.finished().get(0).texts())
          .filteredOn(t -> t.text().contains("go to"))
          .isNotEmpty()
          .allMatch(t -> t.size() >= 14);
      String text = String.join(" ", Pages.texts(paper.pdf())).replaceAll("\\s+", " ");
      OrderCard.Page page = card.upTo(OrderSheet.checks(card, size, PHRASES));
      assertThat(page.steps()).hasSizeGreaterThanOrEqualTo(3);
      for (int i = 0; i < page.steps().size(); i++) {
        OrderCard.Step step = page.steps().get(i);
        int number = i + 1;
        assertThat(step.ways()).hasSizeGreaterThan(1);
        assertThat(step.healthy()).isNotEmpty();
        // Each step but the first is led to, and none leads back.
        assertThat(page.steps().subList(0, i).stream().flatMap(s -> s.ways().stream()))
            .satisfies(
                ways ->
                    assertThat(
                            number == 1
                                || ways.stream()
                                    .anyMatch(w -> w.step().equals(Optional.of(number))))
                        .isTrue());
        assertThat(text.split("I read", -1)).hasSize(page.steps().size() + 1);
      }
      assertThat(text).contains("go to 2").contains("open Find the fault");
    }
  }
}
