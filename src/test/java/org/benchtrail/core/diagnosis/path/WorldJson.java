package org.benchtrail.core.diagnosis.path;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Condition;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Group;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Risk;

/**
 * 162 causes in 13 categories with their paths, as they were when the simulation was set up: the delivered catalogue may change,
 * and the figures stay comparable.
 */
record WorldJson(List<CauseCategory> categories, PathCatalogue paths) {
    static WorldJson read() {
        try (InputStream in = WorldJson.class.getResourceAsStream("/diagnosis/paths-world.json")) {
            JsonNode root = new ObjectMapper().readTree(in);
            return new WorldJson(
                    list(root.get("categories"), WorldJson::category),
                    new PathCatalogue(list(root.get("paths"), WorldJson::paths)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static <T> List<T> list(JsonNode nodes, Function<JsonNode, T> each) {
        List<T> all = new ArrayList<>();
        nodes.forEach(n -> all.add(each.apply(n)));
        return all;
    }

    private static List<String> texts(JsonNode nodes) {
        return list(nodes, JsonNode::asText);
    }

    private static Map<String, Double> numbers(JsonNode node) {
        Map<String, Double> all = new LinkedHashMap<>();
        node.properties().forEach(e -> all.put(e.getKey(), e.getValue().asDouble()));
        return all;
    }

    private static <E extends Enum<E>> E word(Class<E> type, String word) {
        return Enum.valueOf(type, word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    private static CauseCategory category(JsonNode c) {
        return new CauseCategory(
                c.get("id").asText(),
                c.get("id").asText(),
                c.get("escalateMinutes").asDouble(),
                list(
                        c.get("groups"),
                        g -> new Group(
                                g.get("id").asText(), g.get("correlation").asDouble())),
                list(c.get("findings"), WorldJson::finding),
                list(c.get("causes"), WorldJson::cause),
                List.of());
    }

    private static Finding finding(JsonNode f) {
        String group = f.get("group").asText();
        return new Finding(
                f.get("id").asText(),
                f.get("id").asText(),
                Finding.Kind.ANSWER,
                texts(f.get("values")),
                numbers(f.get("background")),
                f.get("minutes").asDouble(),
                Risk.NONE,
                list(f.get("applies"), a -> new Condition(a.get("finding").asText(), texts(a.get("is")))),
                group.isEmpty() ? null : group,
                null);
    }

    private static Cause cause(JsonNode c) {
        List<Deviation> deviations = new ArrayList<>();
        c.get("deviations").properties().forEach(e -> deviations.add(new Deviation(e.getKey(), numbers(e.getValue()))));
        boolean reversible = c.get("reversible").asBoolean();
        return new Cause(
                c.get("id").asText(),
                c.get("id").asText(),
                c.get("weight").asDouble(),
                deviations,
                "look at it",
                5,
                repair(c, reversible),
                "");
    }

    private static Repair repair(JsonNode r, boolean reversible) {
        return new Repair(
                "repair",
                r.get("minutes").asDouble(),
                r.get("verify").asDouble(),
                r.get("fix").asDouble(),
                0,
                word(Risk.class, r.get("risk").asText()),
                reversible,
                texts(r.get("needs")));
    }

    private static CategoryPaths paths(JsonNode p) {
        Map<String, Map<String, Double>> spread = new HashMap<>();
        p.get("spread").properties().forEach(e -> spread.put(e.getKey(), numbers(e.getValue())));
        Map<String, String> requires = new HashMap<>();
        p.get("requires")
                .properties()
                .forEach(e -> requires.put(e.getKey(), e.getValue().asText()));
        return new CategoryPaths(
                p.get("id").asText(),
                p.get("residual").asDouble(),
                list(p.get("segments"), WorldJson::segment),
                spread,
                requires,
                list(p.get("paths"), WorldJson::path),
                list(p.get("whole"), WorldJson::whole),
                list(
                        p.get("changes"),
                        c -> new Change(c.get("kind").asText(), c.get("finding").asText(), texts(c.get("touches")))),
                list(
                        p.get("stands"),
                        s -> new StandsFor(
                                s.get("finding").asText(),
                                word(PathAct.class, s.get("act").asText()),
                                texts(s.get("segments")),
                                s.get("positive").asText())));
    }

    private static Segment segment(JsonNode s) {
        return new Segment(
                s.get("id").asText(),
                s.get("name").asText(),
                new Presence(
                        word(Presence.Start.class, s.get("start").asText()),
                        s.get("ask").asText(),
                        s.get("finding").asText(),
                        new HashSet<>(texts(s.get("is")))),
                s.get("share").asDouble(),
                texts(s.get("causes")),
                Set.copyOf(texts(s.get("seating"))),
                Set.copyOf(texts(s.get("survives"))),
                s.get("inside").asBoolean(),
                list(s.get("acts"), WorldJson::act),
                repair(s.get("repair"), true));
    }

    private static SegmentAct act(JsonNode a) {
        return new SegmentAct(
                word(PathAct.class, a.get("act").asText()),
                a.get("minutes").asDouble(),
                word(Risk.class, a.get("risk").asText()),
                a.get("with").asText(),
                texts(a.get("needs")),
                texts(a.get("cautions")),
                new HashSet<>(list(a.get("never"), n -> word(Bar.class, n.asText()))));
    }

    private static FaultPath path(JsonNode p) {
        return new FaultPath(
                p.get("id").asText(),
                p.get("title").asText(),
                texts(p.get("order")),
                list(p.get("points"), WorldJson::point));
    }

    private static Point point(JsonNode p) {
        String same = p.get("same").asText();
        return new Point(
                p.get("after").asText(),
                p.get("at").asText(),
                p.get("instruction").asText(),
                p.get("bad").asText(),
                word(Point.Side.class, p.get("faultThen").asText()),
                false,
                p.get("minutes").asDouble(),
                word(Risk.class, p.get("risk").asText()),
                texts(p.get("cautions")),
                same.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Point.Same(same, p.get("sameBad").asText())));
    }

    private static WholeTest whole(JsonNode w) {
        return new WholeTest(
                word(PathAct.class, w.get("act").asText()),
                w.get("instruction").asText(),
                texts(w.get("segments")),
                w.get("minutes").asDouble(),
                word(Risk.class, w.get("risk").asText()),
                texts(w.get("needs")),
                texts(w.get("cautions")),
                w.get("same").asText());
    }
}
