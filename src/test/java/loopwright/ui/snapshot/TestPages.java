package loopwright.ui.snapshot;

import loopwright.casework.CaseDesk;
import loopwright.casework.prove.ProofStore;
import loopwright.evidence.Bench;
import loopwright.ui.fake.FakeCaseDesk;
import loopwright.ui.fake.FakePreferences;
import loopwright.ui.prove.CircuitPage;

/** Pages of a test's window. */
public final class TestPages {
  private TestPages() {}

  /** The page that proves circuits, with proofs that last as long as the test. */
  public static CircuitPage proving(TestWindow window) {
    return proving(window, new FakeCaseDesk(), new Bench.ProofsInMemory());
  }

  /** The same over a desk for what isn't as it should be, with proofs that are kept. */
  public static CircuitPage proving(TestWindow window, CaseDesk desk, ProofStore proofs) {
    return new CircuitPage(
        Bench.proveDesk(desk, proofs), new FakePreferences(), window.background());
  }
}
