package org.benchtrail.ticket.bench;

import java.util.List;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.bench.ResultView;
import org.benchtrail.platform.Option;

/**
 * A result that would be attached, and where it may go.
 *
 * @param chosen the place that is chosen already; empty if none
 */
public record AttachView(
        String id,
        String title,
        String address,
        ResultView result,
        List<BenchRun.Hidden> values,
        List<Option> places,
        String chosen,
        String meaning,
        List<String> problems) {

    static AttachView of(BenchRun run, List<BenchQueries.Place> places, String chosen, List<String> problems) {
        return new AttachView(
                run.id(),
                run.title(),
                run.address(),
                run.view(),
                run.hidden(),
                places.stream().map(p -> new Option(p.value(), words(p))).toList(),
                chosen,
                run.meaning(chosen.contains("/")),
                problems);
    }

    private static String words(BenchQueries.Place place) {
        String part = place.part() == null ? "" : ": checks the part \u201c" + place.part() + "\u201d";
        return place.ticket() + " " + place.title() + part;
    }
}
