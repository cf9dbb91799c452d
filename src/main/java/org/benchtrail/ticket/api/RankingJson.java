package org.benchtrail.ticket.api;

import java.util.List;
import org.benchtrail.core.method.Caution;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.theorize.NextView;
import org.benchtrail.ticket.theorize.RankingView;
import org.benchtrail.ticket.theorize.WhereView;
import org.jspecify.annotations.Nullable;

/**
 * The causes of a ticket, ranked.
 *
 * @param catalogue version of the catalogue
 * @param figures where they come from
 * @param next id of the finding that is best asked next; null if acting is better
 */
public record RankingJson(
        int catalogue,
        String figures,
        boolean hasEvidence,
        List<CauseJson> causes,
        List<String> warnings,
        String flips,
        WhereJson where,
        @Nullable TestJson next,
        List<TestJson> tests,
        String act) {

    /**
     * Where the fault is.
     *
     * @param leading most likely where, in one sentence
     */
    public record WhereJson(String leading, String elsewhere, List<PathJson> paths) {
        static WhereJson of(WhereView w) {
            return new WhereJson(
                    w.leading(),
                    w.elsewhere(),
                    w.strips().stream().map(PathJson::of).toList());
        }
    }

    public record PathJson(String title, List<PlaceJson> places) {
        static PathJson of(WhereView.StripView s) {
            return new PathJson(
                    s.title(), s.places().stream().map(PlaceJson::of).toList());
        }
    }

    /** @param measured what was measured behind it; empty if nothing was */
    public record PlaceJson(String name, String chance, boolean meant, String measured) {
        static PlaceJson of(WhereView.PlaceView p) {
            return new PlaceJson(p.name(), p.chance(), p.meant(), p.measured());
        }
    }

    /**
     * A cause with its place.
     *
     * @param percent of a bar's length, 1 to 99
     * @param why what speaks for it, strongest first
     * @param whyNot what speaks against it, strongest first
     * @param out whether an earlier round ruled it out
     */
    public record CauseJson(
            String id, String name, String chance, long percent, List<String> why, List<String> whyNot, boolean out) {
        static CauseJson of(RankingView.Line c) {
            return new CauseJson(c.id(), c.name(), c.chance(), c.percent(), c.why(), c.whyNot(), c.out());
        }
    }

    /**
     * A test, ready to be made a check.
     *
     * @param label a statement that the question asks for
     * @param act what to do
     * @param question what to look for
     * @param minutes of the test itself
     * @param saves whole minutes it saves on average; empty if the saving is not worth naming
     * @param values what can come out, for a question that is answered at once
     * @param reading whether it is measured
     * @param expectation what is seen if the active theory is right; empty while there is none
     */
    public record TestJson(
            String finding,
            String label,
            String act,
            String question,
            long minutes,
            String saves,
            List<String> values,
            boolean reading,
            String unit,
            String expectation,
            boolean invasive,
            List<Caution> cautions) {
        static TestJson of(NextView.Test t) {
            return new TestJson(
                    t.finding(),
                    t.label(),
                    t.act(),
                    t.question(),
                    t.minutes(),
                    t.saves(),
                    t.values().stream().map(Option::value).toList(),
                    t.reading(),
                    t.unit(),
                    t.expectation(),
                    t.invasive(),
                    t.cautions());
        }
    }

    static RankingJson of(RankingView r) {
        return new RankingJson(
                r.catalogue(),
                r.figures(),
                r.rested(),
                r.causes().stream().map(CauseJson::of).toList(),
                r.warnings(),
                r.flips(),
                WhereJson.of(r.where()),
                r.advised().tests().stream().findFirst().map(TestJson::of).orElse(null),
                r.advised().tests().stream().map(TestJson::of).toList(),
                r.advised().act());
    }
}
