package loopwright.io.wire;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import loopwright.casework.CaseView;
import loopwright.casework.Outlook;

/** What the results of a check would leave, as objects. */
final class OutlookShapes {
  private OutlookShapes() {}

  /**
   * The outlook on a check.
   *
   * @param then what follows on each of its branches; empty if that wasn't asked for
   */
  static ObjectNode outlook(Outlook outlook, List<Outlook.Then> then) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("check", outlook.check());
    node.put("kind", outlook.kind().word());
    node.put("words", outlook.words());
    node.set("set", WireCodec.texts(outlook.set()));
    WireCodec.number(node, "minutes", outlook.minutes());
    node.put("proposed", outlook.proposed());
    node.put("note", outlook.note());
    ArrayNode branches = node.putArray("branches");
    for (int i = 0; i < outlook.branches().size(); i++) {
      Outlook.Branch branch = outlook.branches().get(i);
      ObjectNode b = WireCodec.outcome(branch.outcome());
      b.set("left", left(branch.left()));
      if (i < then.size()) {
        b.set("then", then(then.get(i)));
      }
      branches.add(b);
    }
    ArrayNode instead = node.putArray("instead");
    for (Outlook.Choice choice : outlook.instead()) {
      ObjectNode c = instead.addObject();
      c.put("check", choice.check());
      c.put("words", choice.words());
      WireCodec.number(c, "minutes", choice.minutes());
    }
    return node;
  }

  private static ObjectNode then(Outlook.Then then) {
    ObjectNode node = Shapes.JSON.createObjectNode();
    node.put("next", then.move().word());
    node.put("words", then.words());
    then.check().ifPresent(c -> node.put("check", c));
    node.set("set", WireCodec.texts(then.set()));
    if (then.move() == CaseView.Move.CHECK) {
      WireCodec.number(node, "minutes", then.minutes());
    }
    node.set("left", left(then.left()));
    ArrayNode outcomes = node.putArray("outcomes");
    then.outcomes().forEach(o -> outcomes.add(WireCodec.outcome(o)));
    return node;
  }

  private static ArrayNode left(List<Outlook.Left> left) {
    ArrayNode array = Shapes.JSON.createArrayNode();
    for (Outlook.Left l : left) {
      ObjectNode item = array.addObject();
      item.put("part", l.part());
      item.put("title", l.title());
      WireCodec.number(item, "belief", l.belief());
    }
    return array;
  }
}
