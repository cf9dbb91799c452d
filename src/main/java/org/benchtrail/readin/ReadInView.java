package org.benchtrail.readin;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.measure.Series;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.readin.Kind;
import org.benchtrail.core.readin.ReadIn;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.identify.ReadingWords;
import org.jspecify.annotations.Nullable;

/**
 * The page in ready text.
 *
 * @param typed what stands in the form's fields
 * @param shown what was found; null before it is looked at, and if it is malformed
 */
public record ReadInView(
        List<Choice> kinds,
        Typed typed,
        Notice notice,
        @Nullable Shown shown) {
    private static final int MOST_SAMPLES = 200;
    /** Below what the server takes as an address, with room for its own part. */
    private static final int LONGEST_LINK = 15_000;

    private static final int SAMPLE_DIGITS = 9;

    /** One of the kinds, with what it takes. */
    public record Choice(String id, String words, String hint, boolean chosen) {}

    public record Typed(String text, String device, String quantity, String unit, String ticket, String fileName) {}

    /** What stands at the head of the page after a request that did not end in a plain success. */
    public record Notice(String words, List<Invalid.Problem> problems, List<Missing> missing) {
        static final Notice NONE = new Notice("", List.of(), List.of());
    }

    /**
     * What was found.
     *
     * @param heading how much
     * @param seen names it
     * @param ticket to be recorded on; empty if none was given
     * @param recording whether the viewer may record on tickets
     * @param warmUp address of the warm-up calculation with the samples; empty if there is none
     * @param warmUpNote why there is no such address, for a series
     */
    public record Shown(
            String heading,
            List<ReadingLine> readings,
            List<FindingLine> findings,
            List<String> skipped,
            String seen,
            String ticket,
            int version,
            boolean recording,
            boolean original,
            String warmUp,
            String warmUpNote) {}

    public record ReadingLine(String key, boolean taken, ReadingRecorded fact, ReadingWords words) {}

    public record FindingLine(String key, boolean taken, FindingRecorded fact) {}

    static List<Choice> kinds(String chosen) {
        return Arrays.stream(Kind.values())
                .map(k -> new Choice(k.id(), k.words(), k.hint(), k.id().equals(chosen)))
                .toList();
    }

    /** Key of the line that keeps what was read in as a file. */
    static final String ORIGINAL = "original";

    /**
     * @param taken keys of the ticked lines; null ticks all
     * @param version of the ticket, 0 without one
     */
    static Shown shown(
            ReadIn found, String seen, String ticket, int version, boolean recording, @Nullable Set<String> taken) {
        List<ReadingLine> readings = IntStream.range(0, found.readings().size())
                .mapToObj(i -> {
                    ReadingRecorded fact = found.readings().get(i);
                    return new ReadingLine("r" + i, ticked(taken, "r" + i), fact, ReadingWords.of(fact));
                })
                .toList();
        List<FindingLine> findings = IntStream.range(0, found.findings().size())
                .mapToObj(i -> new FindingLine(
                        "f" + i, ticked(taken, "f" + i), found.findings().get(i)))
                .toList();
        String warmUp = found.series().map(series -> warmUp(series, ticket)).orElse("");
        return new Shown(
                counted(readings.size(), "reading") + ", " + counted(findings.size(), "finding"),
                readings,
                findings,
                found.skipped(),
                seen,
                ticket,
                version,
                recording,
                ticked(taken, ORIGINAL),
                warmUp,
                found.series().isPresent() && warmUp.isEmpty()
                        ? "The warm-up calculation takes at most " + MOST_SAMPLES
                                + " samples by a link: thin the series out for it."
                        : "");
    }

    private static boolean ticked(@Nullable Set<String> taken, String key) {
        return taken == null || taken.contains(key);
    }

    private static String counted(int count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    /** The facts of the ticked lines. */
    static List<Act> acts(ReadIn found, Set<String> taken) {
        List<Act> acts = new ArrayList<>();
        for (int i = 0; i < found.readings().size(); i++) {
            ReadingRecorded reading = found.readings().get(i);
            if (taken.contains("r" + i)) {
                acts.add(sheet -> reading);
            }
        }
        for (int i = 0; i < found.findings().size(); i++) {
            FindingRecorded finding = found.findings().get(i);
            if (taken.contains("f" + i)) {
                acts.add(sheet -> finding);
            }
        }
        return acts;
    }

    /** Times count from the first sample. Empty if the samples are too many for an address. */
    static String warmUp(Series series, String ticket) {
        if (series.size() > MOST_SAMPLES) {
            return "";
        }
        String samples = IntStream.range(0, series.size())
                .mapToObj(i -> field(i, "seconds", series.time(i) - series.time(0))
                        + "&"
                        + field(i, "temperature", series.value(i)))
                .collect(Collectors.joining("&"));
        String link = "/bench/warm-up?" + (ticket.isEmpty() ? "" : "for=" + ticket + "&") + samples;
        return link.length() <= LONGEST_LINK ? link : "";
    }

    private static String field(int row, String name, double value) {
        return "samples%5B" + row + "%5D." + name + "="
                + URLEncoder.encode(Numeral.of(value, SAMPLE_DIGITS), StandardCharsets.UTF_8);
    }
}
