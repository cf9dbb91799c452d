package org.benchtrail.catalogue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.diagnosis.Condition;
import org.benchtrail.core.diagnosis.Phrase;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.path.Bar;
import org.benchtrail.core.diagnosis.path.CategoryPaths;
import org.benchtrail.core.diagnosis.path.Change;
import org.benchtrail.core.diagnosis.path.FaultPath;
import org.benchtrail.core.diagnosis.path.GenericRules;
import org.benchtrail.core.diagnosis.path.PathAct;
import org.benchtrail.core.diagnosis.path.Point;
import org.benchtrail.core.diagnosis.path.Presence;
import org.benchtrail.core.diagnosis.path.Segment;
import org.benchtrail.core.diagnosis.path.SegmentAct;
import org.benchtrail.core.diagnosis.path.StandsFor;
import org.benchtrail.core.diagnosis.path.TestNote;
import org.benchtrail.core.diagnosis.path.WholeTest;
import org.benchtrail.core.method.Caution;
import org.benchtrail.platform.YamlNode;

/** Turns the tree of a file of paths into entries; the keys are explained at its head. */
final class PathEntries {
    private static final double VERIFY_MINUTES = 5;
    private static final double FIX_PROBABILITY = 0.9;

    private final FileFaults file;

    PathEntries(FileFaults file) {
        this.file = file;
    }

    List<CategoryPaths> categories(YamlNode root) {
        EntryReader e = reader(root, "", Set.of("format", "catalogueFormat", "origin", "rules", "categories"));
        if (e.number("format") != 1) {
            file.fault(file.row("format"), "format", "give format 1: no other is known");
        }
        rules(e);
        return e.list("categories", this::category);
    }

    private EntryReader reader(YamlNode node, String at, Set<String> keys) {
        return new EntryReader(file, node, at, keys);
    }

    /** The file repeats the main numbers, so that whoever reads it knows them; they are no setting. */
    private void rules(EntryReader e) {
        YamlNode node = e.find("rules");
        Map<String, Double> used = Map.of(
                "upstream", GenericRules.POINT_THERE,
                "downstream", GenericRules.POINT_BEYOND,
                "curedThere", GenericRules.CURED_THERE,
                "curedElsewhere", GenericRules.CURED_ELSEWHERE,
                "curedNeighbour", GenericRules.CURED_NEIGHBOUR);
        if (node == null) {
            file.fault(file.row(""), "rules", "add 'rules'");
            return;
        }
        EntryReader rules = reader(node, "rules", used.keySet());
        used.entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(u -> {
            if (rules.number(u.getKey()) != u.getValue()) {
                String at = rules.path(u.getKey());
                file.fault(file.row(at), at, "write " + u.getValue() + ", which is what is computed with");
            }
        });
    }

    private CategoryPaths category(YamlNode node, String at) {
        EntryReader e = reader(
                node,
                at,
                Set.of(
                        "id",
                        "residual",
                        "segments",
                        "spread",
                        "requires",
                        "paths",
                        "whole",
                        "changes",
                        "stands",
                        "words",
                        "tests"));
        Map<String, Map<String, Double>> spread = new LinkedHashMap<>();
        e.map("spread").forEach((cause, parts) -> spread.put(cause, numbers(parts, e.path("spread") + "." + cause)));
        Map<String, String> requires = new LinkedHashMap<>();
        e.map("requires")
                .forEach((id, segment) -> requires.put(id, file.scalar(segment, e.path("requires") + "." + id)));
        return new CategoryPaths(
                e.text("id"),
                e.number("residual"),
                e.list("segments", this::segment),
                spread,
                requires,
                e.list("paths", this::path),
                e.list("whole", this::whole),
                changes(e),
                stands(e),
                words(e),
                notes(e));
    }

    private List<Change> changes(EntryReader e) {
        List<Change> changes = new ArrayList<>();
        e.map("changes").forEach((kind, n) -> {
            EntryReader c = reader(n, e.path("changes") + "." + kind, Set.of("finding", "touches"));
            changes.add(new Change(kind, c.text("finding"), c.texts("touches")));
        });
        return changes;
    }

    private List<StandsFor> stands(EntryReader e) {
        List<StandsFor> stands = new ArrayList<>();
        e.map("stands").forEach((finding, n) -> {
            EntryReader s = reader(n, e.path("stands") + "." + finding, Set.of("act", "segments", "positive"));
            stands.add(new StandsFor(
                    finding, s.word("act", PathAct.class, null), s.texts("segments"), s.text("positive")));
        });
        return stands;
    }

    private Map<String, TestNote> notes(EntryReader e) {
        Map<String, TestNote> notes = new LinkedHashMap<>();
        e.map("tests").forEach((test, n) -> {
            EntryReader t = reader(n, e.path("tests") + "." + test, Set.of("label", "do", "unless"));
            notes.put(test, new TestNote(t.text("label", ""), t.text("do", ""), t.list("unless", this::condition)));
        });
        return notes;
    }

    private Condition condition(YamlNode node, String at) {
        EntryReader c = reader(node, at, Set.of("finding", "is"));
        return new Condition(c.text("finding"), c.texts("is"));
    }

    private Map<String, List<Phrase>> words(EntryReader e) {
        Map<String, List<Phrase>> words = new LinkedHashMap<>();
        YamlNode node = e.find("words");
        if (node != null) {
            Set<String> segments = e.map("words").keySet();
            EntryReader w = reader(node, e.path("words"), segments);
            segments.forEach(
                    s -> words.put(s, w.texts(s).stream().map(Phrase::of).toList()));
        }
        return words;
    }

    private Map<String, Double> numbers(YamlNode node, String at) {
        Map<String, Double> numbers = new LinkedHashMap<>();
        if (node.fields() == null) {
            file.fault(node.row(), at, "give segments with their parts here");
        } else {
            node.fields().forEach((key, n) -> numbers.put(key, file.number(n, at + "." + key)));
        }
        return numbers;
    }

    private Segment segment(YamlNode node, String at) {
        EntryReader e = reader(
                node,
                at,
                Set.of("id", "name", "present", "share", "causes", "seating", "survives", "inside", "acts", "repair"));
        List<SegmentAct> acts = new ArrayList<>();
        e.map("acts")
                .forEach((word, n) -> act(word, n, e.path("acts") + "." + word).ifPresent(acts::add));
        YamlNode present = e.find("present");
        YamlNode repair = e.find("repair");
        return new Segment(
                e.text("id"),
                e.text("name"),
                present == null ? e.missing("present", Presence.ALWAYS) : presence(present, e.path("present")),
                e.number("share"),
                e.texts("causes"),
                Set.copyOf(e.texts("seating")),
                Set.copyOf(e.texts("survives")),
                e.flag("inside", false),
                acts,
                repair(repair == null ? e.missing("repair", empty(node)) : repair, e.path("repair")));
    }

    private static YamlNode empty(YamlNode near) {
        return new YamlNode(near.row(), near.named(), null, Map.of(), null);
    }

    private Presence presence(YamlNode node, String at) {
        if (node.text() != null) {
            if (!node.text().equals("always")) {
                file.fault(node.row(), at, "write always, or say what settles it");
            }
            return Presence.ALWAYS;
        }
        EntryReader e = reader(node, at, Set.of("default", "ask", "finding", "is"));
        return new Presence(
                e.word("default", Presence.Start.class, null),
                e.text("ask", ""),
                e.text("finding", ""),
                Set.copyOf(e.texts("is")));
    }

    private Optional<SegmentAct> act(String word, YamlNode node, String at) {
        EntryReader e = reader(node, at, Set.of("minutes", "risk", "with", "needs", "cautions", "never"));
        Optional<PathAct> act = PathAct.ofWord(word);
        if (act.isEmpty()) {
            file.fault(node.row(), at, "choose look, reseat, substitute, bypass or move, not '" + word + "'");
        }
        return act.map(a -> new SegmentAct(
                a,
                e.number("minutes"),
                e.word("risk", Risk.class, Risk.NONE),
                e.text("with", ""),
                e.texts("needs"),
                cautions(e),
                e.words("never", Bar.class)));
    }

    private static List<String> cautions(EntryReader e) {
        return e.words("cautions", Caution.class).stream()
                .map(Caution::name)
                .sorted()
                .toList();
    }

    private Repair repair(YamlNode node, String at) {
        EntryReader e = reader(
                node, at, Set.of("do", "minutes", "verifyMinutes", "fixProbability", "risk", "reversible", "needs"));
        return new Repair(
                e.text("do"),
                e.number("minutes"),
                e.number("verifyMinutes", VERIFY_MINUTES),
                e.number("fixProbability", FIX_PROBABILITY),
                0,
                e.word("risk", Risk.class, Risk.NONE),
                e.flag("reversible", true),
                e.texts("needs"));
    }

    private FaultPath path(YamlNode node, String at) {
        EntryReader e = reader(node, at, Set.of("id", "title", "order", "points"));
        return new FaultPath(e.text("id"), e.text("title"), e.texts("order"), e.list("points", this::point));
    }

    private Point point(YamlNode node, String at) {
        EntryReader e = reader(
                node,
                at,
                Set.of("after", "at", "do", "bad", "faultThen", "badElsewhere", "minutes", "risk", "cautions", "same"));
        YamlNode same = e.find("same");
        return new Point(
                e.text("after"),
                e.text("at"),
                e.text("do"),
                e.text("bad"),
                e.word("faultThen", Point.Side.class, null),
                e.flag("badElsewhere", false),
                e.number("minutes"),
                e.word("risk", Risk.class, Risk.NONE),
                cautions(e),
                Optional.ofNullable(same).map(n -> {
                    EntryReader s = reader(n, e.path("same"), Set.of("finding", "bad"));
                    return new Point.Same(s.text("finding"), s.text("bad"));
                }));
    }

    private WholeTest whole(YamlNode node, String at) {
        EntryReader e = reader(
                node,
                at,
                Set.of(
                        "act",
                        "do",
                        "shares",
                        "removes",
                        "loaded",
                        "names",
                        "minutes",
                        "risk",
                        "needs",
                        "cautions",
                        "same"));
        List<String> segments = new ArrayList<>();
        List.of("shares", "removes", "loaded", "names").forEach(key -> segments.addAll(e.texts(key)));
        YamlNode same = e.find("same");
        return new WholeTest(
                e.word("act", PathAct.class, null),
                e.text("do"),
                segments,
                e.number("minutes"),
                e.word("risk", Risk.class, Risk.NONE),
                e.texts("needs"),
                cautions(e),
                same == null
                        ? ""
                        : reader(same, e.path("same"), Set.of("finding")).text("finding"));
    }
}
