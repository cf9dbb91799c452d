package org.benchtrail.core.method.desk;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;

/**
 * Cautions read and taken, an act of its own before the deed they guard.
 *
 * @param about entry number of the check or action; 1 for a measurement that belongs to neither
 */
public record CautionsAcknowledged(int about, Set<Caution> cautions) implements DeskFact {
    public CautionsAcknowledged {
        cautions = EnumCopies.set(Caution.class, cautions);
    }

    /** What still has to be acknowledged before that check or action is recorded as done in the present request. */
    public static Set<Caution> open(Situation s, StandingFact<?> about, Set<Caution> owed) {
        return without(owed, s.sheet(), about, a -> isEarlier(a, s));
    }

    /** The same, for the page of the next request. */
    public static Set<Caution> open(JobSheet sheet, StandingFact<?> about, Set<Caution> owed) {
        return without(owed, sheet, about, a -> true);
    }

    /** What was not acknowledged before that deed was recorded, in a request of its own. */
    public static Set<Caution> missed(JobSheet sheet, StandingFact<?> about, Set<Caution> owed, StandingFact<?> deed) {
        return without(
                owed, sheet, about, a -> deed.isAfter(a.entry()) && !a.stamp().sameRequest(deed.stamp()));
    }

    /** Whether that caution was acknowledged in this round, before the present request, whatever for. */
    public static boolean taken(Situation s, Caution caution) {
        return s.sheet().ofRound(CautionsAcknowledged.class).stream()
                .anyMatch(a -> isEarlier(a, s) && a.fact().cautions().contains(caution));
    }

    /** Whether a correction keeps the cautions: other words do not make a deed harmless that was dangerous before. */
    public static List<Missing> kept(Set<Caution> before, Set<Caution> after) {
        return after.containsAll(before)
                ? List.of()
                : Missing.rule(
                        "cautions-kept",
                        "A correction does not take cautions away: keep them, or withdraw the entry and plan it anew.",
                        "trail");
    }

    private static boolean isEarlier(StandingFact<CautionsAcknowledged> acknowledged, Situation s) {
        return !acknowledged.stamp().request().equals(s.request());
    }

    /** Titles, for a sentence. */
    public static String titles(Set<Caution> cautions) {
        return cautions.stream().map(Caution::title).collect(Collectors.joining(", "));
    }

    /** The checks of a round are one piece of work, and so are its actions: for each, a caution is asked once. */
    private static Set<Caution> without(
            Set<Caution> owed,
            JobSheet sheet,
            StandingFact<?> about,
            Predicate<StandingFact<CautionsAcknowledged>> which) {
        Set<Caution> open = EnumSet.noneOf(Caution.class);
        open.addAll(owed);
        sheet
                .all(
                        CautionsAcknowledged.class,
                        a -> a.isAfter(about.settledSince())
                                && isOneWork(sheet, a.fact().about(), about))
                .stream()
                .filter(which)
                .forEach(a -> open.removeAll(a.fact().cautions()));
        return open;
    }

    private static boolean isOneWork(JobSheet sheet, int acknowledged, StandingFact<?> about) {
        return acknowledged == about.entry()
                || sheet.latest(about.fact().getClass(), f -> f.entry() == acknowledged)
                        .filter(f -> f.round() == about.round())
                        .isPresent();
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(about, Fact.class, "about"));
    }

    @Override
    public String told(Telling reader) {
        return "for entry " + about + ": " + Told.list(cautions, Caution::title);
    }
}
