package org.benchtrail.core.diagnosis.path;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.diagnosis.Condition;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Making;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.path.GenericRules.Where;

/**
 * A test made from the structure.
 *
 * <p>Its id names it on a job sheet: {@code act:segment} for look, reseat, substitute, bypass and move; {@code
 * point:path.after}; {@code sister:n}, {@code minimal:n} and {@code repeat:n}, counted from 1 in the order of the file;
 * {@code log}; {@code undo}.
 *
 * @param name a statement for lists and reasons, which the question asks for
 * @param values its outcomes: no and yes; good and bad for a point; none and the ids of segments for a log
 * @param minutes of the test itself, without access set-up; 0.5 to 10 000
 * @param with what one must have; empty for nothing
 * @param never states in which it is not offered
 * @param inside whether the case has to be open
 * @param where the segments it tells of
 * @param unless not offered while a listed finding is known to have one of these values
 */
public record GenericTest(
        String id,
        PathAct act,
        String name,
        String instruction,
        String question,
        List<String> values,
        double minutes,
        Risk risk,
        String with,
        List<String> needs,
        List<String> cautions,
        Set<Bar> never,
        boolean inside,
        Map<String, Where> where,
        List<Condition> unless) {
    public static final List<String> NO_YES = List.of("no", "yes");
    public static final List<String> GOOD_BAD = List.of("good", "bad");
    /** Id of reading the log. */
    public static final String LOG = "log";
    /** What a log answers that names nothing. */
    public static final String NAMES_NOTHING = "none";

    public GenericTest {
        values = List.copyOf(values);
        needs = List.copyOf(needs);
        cautions = List.copyOf(cautions);
        never = Set.copyOf(never);
        where = Map.copyOf(where);
        unless = List.copyOf(unless);
    }

    /** In the words of the file, where it has some. */
    GenericTest said(TestNote note) {
        return new GenericTest(
                id,
                act,
                note.label().isEmpty() ? name : note.label(),
                note.instruction().isEmpty() ? instruction : note.instruction(),
                question,
                values,
                minutes,
                risk,
                with,
                needs,
                cautions,
                never,
                inside,
                where,
                note.unless());
    }

    /** Id of a test of one segment. */
    public static String id(PathAct act, String segment) {
        return act.word() + ":" + segment;
    }

    /** Id of the test at a point. */
    public static String id(FaultPath path, Point point) {
        return "point:" + path.id() + "." + point.after();
    }

    Where where(String segment) {
        return where.getOrDefault(segment, Where.ELSE);
    }

    /** The segments that it is done to, shares, loads, removes, names or speaks for. */
    List<String> segments() {
        return where.entrySet().stream()
                .filter(e -> e.getValue() == Where.IN)
                .map(Map.Entry::getKey)
                .sorted()
                .toList();
    }

    /** As a question of a category that is asked like any other. */
    Finding finding(String group) {
        double even = 1.0 / values.size();
        Map<String, Double> background = new HashMap<>();
        values.forEach(v -> background.put(v, even));
        return new Finding(
                id,
                question,
                Finding.Kind.ANSWER,
                values,
                background,
                minutes,
                risk,
                List.of(),
                group.isEmpty() ? null : group,
                null,
                Set.of(),
                making());
    }

    private Making making() {
        String thing = with.isEmpty() ? "" : " Needs: " + with.replace('-', ' ') + ".";
        return new Making(
                name,
                instruction + thing,
                act.way(),
                inside || act.touches(),
                Set.copyOf(cautions),
                needs,
                unless,
                null,
                false);
    }
}
