package loopwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import loopwright.casework.CaseView;
import loopwright.casework.RulesElsewhere;
import org.junit.jupiter.api.Test;

class RulesQuestionTest {
  /** Rules that know whether they were allowed and whether they were taken. */
  private static final class Foreign implements RulesElsewhere {
    boolean allowed;
    boolean taken;

    @Override
    public List<Rule> rules() {
      return List.of(
          new Rule("sense/ghost-volts", "A ghost\u001b[2J", Own.CHANGED),
          new Rule("next/halve", "Halves", Own.SAME));
    }

    @Override
    public String fingerprint() {
      return "00c0ffee";
    }

    @Override
    public boolean allowedBefore() {
      return allowed;
    }

    @Override
    public void take() {
      taken = true;
    }
  }

  private final Foreign foreign = new Foreign();
  private TestWorld world;

  private int run(boolean terminal, String... lines) {
    world = new TestWorld(new MemoryStore(), lines);
    world.rules = foreign;
    world.terminal = terminal;
    return world.run("find", "pumper", "--complaint", "beacon dead", "--rules", "shed/rules");
  }

  @Test
  void theyAreShownAndRunOnYesAlone() {
    assertThat(run(true, "yes", "stop")).as(world.errText()).isZero();
    assertThat(foreign.taken).isTrue();
    assertThat(world.errText())
        .contains("shed" + java.io.File.separator + "rules")
        .contains("changed  sense/ghost-volts: A ghost?[2J")
        .contains("1 are the same")
        .contains("Fingerprint 00c0ffee");
    assertThat(world.desk.open.view().move())
        .as("the command's own lines are left to it")
        .isEqualTo(CaseView.Move.END);
  }

  @Test
  void onNoOrNothingTheyAreNotRun() {
    for (String[] lines : List.of(new String[] {"no"}, new String[] {""}, new String[0])) {
      assertThat(run(true, lines)).isEqualTo(2);
      assertThat(foreign.taken).isFalse();
      assertThat(world.errText()).contains("these are not run");
      assertThat(world.desksMade).isZero();
    }
  }

  @Test
  void whereNobodyCanBeAskedOnlyWhatWasAllowedBeforeIsRun() {
    assertThat(run(false, "yes")).isEqualTo(2);
    assertThat(foreign.taken).isFalse();
    assertThat(world.errText()).contains("nobody can be asked here");
    foreign.allowed = true;
    assertThat(run(false, "stop")).isZero();
    assertThat(foreign.taken).isTrue();
    assertThat(world.errText()).doesNotContain("Fingerprint");
  }

  @Test
  void aFolderThatCannotBeReadIsTold() {
    world = new TestWorld(new MemoryStore());
    assertThat(world.run("cases", "--rules", Path.of("nil").toString())).isEqualTo(2);
    assertThat(world.errText()).contains("--rules");
  }
}
