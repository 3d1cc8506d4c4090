package loopwright.casework.record;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loopwright.casework.Account;
import loopwright.casework.Answer;
import loopwright.casework.CaseEvent;
import loopwright.casework.CaseView;
import loopwright.casework.OwnCheck;
import loopwright.casework.OwnRate;

/**
 * All that a case's journal says, in the order in which it happened.
 *
 * @param opened how it began
 * @param stages the search up to each mend, and what came after the last one; at least one
 * @param remarks what happened besides
 * @param photos photos put to it
 * @param rates what the vehicle had before that counted
 * @param last when something happened last
 * @param missing what of the journal couldn't be read, in words; empty if all could
 */
public record CaseRecord(
    CaseEvent.Opened opened,
    List<Stage> stages,
    List<CaseEvent> remarks,
    List<CaseEvent.Photographed> photos,
    List<OwnRate> rates,
    Instant last,
    String missing) {

  /** Copies the lists. */
  public CaseRecord {
    stages = List.copyOf(stages);
    remarks = List.copyOf(remarks);
    photos = List.copyOf(photos);
    rates = List.copyOf(rates);
  }

  /** Where a case stands. */
  public enum CaseState {
    /** Nothing found yet. */
    OPEN("open"),
    /** Found, not mended. */
    FOUND("found"),
    /** Mended, the mend not proven. */
    MENDED("mended, not proven"),
    /** Mended and proven. */
    PROVEN("mended and proven"),
    /** What was complained of works. */
    NO_FAULT("no fault found");

    private final String word;

    CaseState(String word) {
      this.word = word;
    }

    /** The word shown and written to files. */
    public String word() {
      return word;
    }
  }

  /**
   * A piece of a case in which nothing was mended.
   *
   * @param readings the readings taken in it, also those corrected or taken back
   * @param account what the case said last in it; empty if it came to nothing to say
   * @param settled whether nothing was read, corrected or taken back after that
   * @param mend the mend that ended it; empty for the last piece
   */
  public record Stage(
      List<Taken> readings, Optional<Account> account, boolean settled, Optional<Mend> mend) {
    /** Copies the list. */
    public Stage {
      readings = List.copyOf(readings);
    }

    /** What was found in it. */
    public Optional<Account.Fault> fault() {
      return account.filter(a -> settled).flatMap(Account::fault);
    }

    /** The part whose mend is proven by all of its readings. */
    public Optional<String> proven() {
      return account.filter(a -> settled).flatMap(Account::proven);
    }

    /** What the case said of a reading. */
    public Optional<Account.Line> line(int reading) {
      return account.stream()
          .flatMap(a -> a.readings().stream())
          .filter(l -> l.reading() == reading)
          .findFirst();
    }
  }

  /**
   * A reading.
   *
   * @param number its number in the case
   * @param at when it was taken
   * @param check what was read, and how the vehicle stood
   * @param answer what counts
   * @param corrected what was entered before it was put right, oldest first
   * @param withdrawn whether it was taken back
   */
  public record Taken(
      int number,
      Instant at,
      OwnCheck check,
      Answer answer,
      List<Answer> corrected,
      boolean withdrawn) {
    /** Copies the list. */
    public Taken {
      corrected = List.copyOf(corrected);
    }
  }

  /**
   * A mend.
   *
   * @param part id of the part
   * @param at when
   * @param swapped whether a good part was put in on suspicion
   */
  public record Mend(String part, Instant at, boolean swapped) {}

  /**
   * A mend with what became of it.
   *
   * @param mend the mend
   * @param fault what had been found before it; empty if nothing was
   * @param proven whether its proof succeeded
   */
  public record Repair(Mend mend, Optional<Account.Fault> fault, boolean proven) {}

  /** Where it stands. */
  public CaseState state() {
    Stage now = stages.get(stages.size() - 1);
    if (now.proven().isPresent()) {
      return CaseState.PROVEN;
    }
    if (now.fault().isPresent()) {
      return CaseState.FOUND;
    }
    boolean works =
        now.settled()
            && now.account().filter(a -> a.status() == CaseView.Status.HEALTHY).isPresent();
    if (works) {
      return stages.size() > 1 ? CaseState.MENDED : CaseState.NO_FAULT;
    }
    boolean untried = now.readings().stream().allMatch(Taken::withdrawn);
    return stages.size() > 1 && untried ? CaseState.MENDED : CaseState.OPEN;
  }

  /** Its mends, in order. */
  public List<Repair> repairs() {
    return Stream.iterate(0, i -> i < stages.size() - 1, i -> i + 1)
        .map(
            i -> {
              Mend mend = stages.get(i).mend().orElseThrow();
              boolean proven = stages.get(i + 1).proven().filter(mend.part()::equals).isPresent();
              return new Repair(mend, stages.get(i).fault(), proven);
            })
        .toList();
  }

  /** All readings, in order. */
  public List<Taken> readings() {
    return stages.stream().flatMap(s -> s.readings().stream()).toList();
  }

  /** What it is about, in words: as the case said it, else by the ids of its opening. */
  public String title() {
    return accounts()
        .reduce((a, b) -> b)
        .map(Account::title)
        .orElse(opened.circuit() + " " + opened.kind().words() + " - " + opened.vehicleId());
  }

  /** All that the case said, in order. */
  Stream<Account> accounts() {
    return stages.stream().flatMap(s -> s.account().stream());
  }
}
