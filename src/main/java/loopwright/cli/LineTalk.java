package loopwright.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loopwright.casework.CaseView;
import loopwright.casework.CheckView;
import loopwright.casework.FindCase;
import loopwright.casework.Outlook;
import loopwright.casework.OwnCheck;
import loopwright.casework.Problem;
import loopwright.casework.SimulatedMeter;
import loopwright.io.wire.ClientId;
import loopwright.io.wire.Request;
import loopwright.io.wire.Told;
import loopwright.io.wire.WireCodec;
import loopwright.model.Vehicle;

/**
 * The machine conversation: {@code ready} and the first state unasked, then one line out for each
 * line in, until the case ends or there are no more lines.
 */
final class LineTalk {
  /** How many replies are kept for repeated ids. */
  static final int REPLIES = 500;

  private final FindCase findCase;
  private final Vehicle vehicle;
  private final String vehicleName;
  private final Optional<SimulatedMeter> meter;
  private final String story;
  private final Meanwhile in;
  private final PrintStream out;
  private final WireCodec codec = new WireCodec();
  private final Set<ClientId> used = new HashSet<>();
  private final Map<ClientId, String> replies =
      new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<ClientId, String> eldest) {
          return size() > REPLIES;
        }
      };

  LineTalk(
      FindCase findCase,
      Vehicle vehicle,
      String vehicleName,
      Optional<SimulatedMeter> meter,
      String story,
      Meanwhile in,
      PrintStream out) {
    this.findCase = findCase;
    this.vehicle = vehicle;
    this.vehicleName = vehicleName;
    this.meter = meter;
    this.story = story;
    this.in = in;
    this.out = out;
  }

  ExitCode run() throws IOException {
    CaseView view = findCase.view();
    write(
        codec.ready(
            new WireCodec.Opening(
                vehicle, vehicleName, view, findCase.points(), findCase.settings(), story)));
    write(codec.state(Optional.empty(), view, WireCodec.Asked.NOTHING));
    // A reader that has gone away gets no more; what it told is kept.
    while (findCase.view().move() != CaseView.Move.END && !out.checkError()) {
      Optional<Told> told = codec.read(in.next());
      if (told.isEmpty()) {
        break;
      }
      write(reply(told.get()));
    }
    return ExitCode.DONE;
  }

  private String reply(Told told) {
    if (told instanceof Told.Bad bad) {
      return codec.problem(bad.id(), bad.problem());
    }
    Told.Good good = (Told.Good) told;
    Optional<ClientId> id = good.id();
    if (id.isPresent() && used.contains(id.get())) {
      String before = replies.get(id.get());
      return before != null
          ? before
          : codec.problem(id, new Problem("id", id.get().json(), Speech.of("line.id")));
    }
    String reply;
    try {
      reply = accept(id, good.request());
    } catch (Problem problem) {
      return codec.problem(id, problem);
    }
    id.ifPresent(
        i -> {
          used.add(i);
          replies.put(i, reply);
        });
    return reply;
  }

  private String accept(Optional<ClientId> id, Request request) throws Problem {
    WireCodec.Asked asked = WireCodec.Asked.NOTHING;
    CaseView view;
    if (request instanceof Request.Answered r) {
      view = findCase.answer(r.check(), r.answer());
    } else if (request instanceof Request.Meter) {
      view = metered();
    } else if (request instanceof Request.OwnReading r) {
      OwnCheck check =
          new OwnCheck(
              r.kind(),
              r.red(),
              r.black(),
              r.look(),
              r.setting().orElseGet(() -> OwnSetting.circuits(findCase)));
      view = findCase.take(check, r.answer());
    } else if (request instanceof Request.Refuse r) {
      view = findCase.refuse(r.check(), r.why());
    } else if (request instanceof Request.Withdraw r) {
      view = findCase.withdraw(r.reading());
    } else if (request instanceof Request.Correct r) {
      view = findCase.correct(r.reading(), r.answer());
    } else if (request instanceof Request.Swapped r) {
      view = findCase.swapped(r.part(), r.helped());
    } else if (request instanceof Request.Repaired r) {
      view = findCase.repaired(r.part());
    } else if (request instanceof Request.Undo r) {
      view = findCase.undo(r.deed());
    } else if (request instanceof Request.Warn r) {
      view = findCase.warn(r.warning());
    } else if (request instanceof Request.Isolated) {
      view = findCase.isolated();
    } else if (request instanceof Request.Gone) {
      view = findCase.gone();
    } else if (request instanceof Request.WhyNext) {
      asked = WireCodec.Asked.why(findCase.whyNext(), List.of());
      view = findCase.view();
    } else if (request instanceof Request.WhyStill r) {
      asked = WireCodec.Asked.why(findCase.whyStill(r.about()), findCase.against(r.about()));
      view = findCase.view();
    } else if (request instanceof Request.Outlook r) {
      Outlook outlook = findCase.outlook(r.check());
      List<Outlook.Then> then = new ArrayList<>();
      for (int i = 0; r.depth() > 1 && i < outlook.branches().size(); i++) {
        then.add(findCase.then(outlook.check(), i));
      }
      asked = WireCodec.Asked.outlook(outlook, then);
      view = findCase.view();
    } else {
      view = findCase.stop();
    }
    return codec.state(id, view, asked);
  }

  /** The practice meter answers the proposed check. */
  private CaseView metered() throws Problem {
    if (meter.isEmpty()) {
      throw new Problem("type", "meter", Speech.of("meter.none"));
    }
    Optional<CheckView> check = findCase.view().next();
    if (check.isEmpty()) {
      throw new Problem("type", "meter", Speech.of("no-check-open"));
    }
    return findCase.answer(check.get().id(), meter.get().read(check.get()));
  }

  private void write(String line) {
    byte[] bytes = (line + "\n").getBytes(StandardCharsets.UTF_8);
    out.write(bytes, 0, bytes.length);
    out.flush();
  }
}
