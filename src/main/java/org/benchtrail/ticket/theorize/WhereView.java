package org.benchtrail.ticket.theorize;

import io.quarkus.qute.RawString;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Words;
import org.benchtrail.core.diagnosis.path.Localisation;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.diagnosis.path.PathStrip;
import org.benchtrail.core.diagnosis.path.PlaceWords;
import org.benchtrail.core.diagnosis.path.Segment;
import org.benchtrail.platform.chart.SvgStrip;

/**
 * Where the fault is, in plain words and as a drawing.
 *
 * @param leading most likely where, in one sentence
 * @param elsewhere the rest in one line; empty if nothing is worth saying
 * @param strips the paths with what was measured on them
 * @param questions whether something is there at all
 */
public record WhereView(String leading, String elsewhere, List<StripView> strips, List<PresenceQuestion> questions) {
    private static final double PERCENT = 100;

    /**
     * A path.
     *
     * @param drawing an SVG element; the list of its places says the same
     */
    public record StripView(String title, RawString drawing, List<PlaceView> places) {}

    /**
     * A place on a path.
     *
     * @param percent of a bar's length, 1 to 99
     * @param measured what was measured behind it, a sentence; empty if nothing was
     */
    public record PlaceView(int number, String name, String chance, long percent, boolean meant, String measured) {}

    /** @param id by which the answer is sent */
    public record PresenceQuestion(String id, String words) {}

    static WhereView of(Localisation where) {
        PlaceWords words = new PlaceWords(where);
        Set<String> meant = where.stretch().map(t -> Set.copyOf(t.segments())).orElse(Set.of());
        return new WhereView(
                sentence(words.where()),
                words.elsewhere().isEmpty() ? "" : "Elsewhere: " + words.elsewhere() + ".",
                PathStrip.of(where).stream()
                        .filter(s -> s.boxes().size() > 1)
                        .map(s -> strip(s, meant))
                        .toList(),
                Stream.concat(where.questions().stream(), where.contradicted().stream())
                        .distinct()
                        .map(WhereView::question)
                        .toList());
    }

    private static String sentence(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
    }

    /** Whether the category's paths are described. */
    public boolean isDrawn() {
        return !strips.isEmpty();
    }

    /** Whether what is known points to a stretch of a path. */
    public boolean isPlaced() {
        return strips.stream().flatMap(strip -> strip.places().stream()).anyMatch(PlaceView::meant);
    }

    private static PresenceQuestion question(Segment s) {
        return new PresenceQuestion(Localiser.THERE + s.id(), s.present().ask());
    }

    private static StripView strip(PathStrip strip, Set<String> meant) {
        List<PlaceView> places = new ArrayList<>();
        for (PathStrip.Box box : strip.boxes()) {
            places.add(new PlaceView(
                    places.size() + 1,
                    box.name(),
                    Words.chance(box.mass()),
                    Math.max(1, Math.min(99, Math.round(PERCENT * box.mass()))),
                    meant.contains(box.segment()),
                    measured(box)));
        }
        return new StripView(strip.title(), drawing(strip, meant), places);
    }

    private static RawString drawing(PathStrip strip, Set<String> meant) {
        List<SvgStrip.Box> boxes = strip.boxes().stream()
                .map(b -> new SvgStrip.Box(b.mass(), meant.contains(b.segment()), between(b.mark())))
                .toList();
        return SvgStrip.draw(boxes, strip.title() + ", place by place; the list below says the same");
    }

    private static SvgStrip.Between between(PathStrip.Mark mark) {
        return switch (mark) {
            case NONE, OPEN -> SvgStrip.Between.NOTHING;
            case GOOD -> SvgStrip.Between.GOOD;
            case BAD -> SvgStrip.Between.BAD;
        };
    }

    private static String measured(PathStrip.Box box) {
        return switch (box.mark()) {
            case NONE, OPEN -> "";
            case GOOD -> "good at " + box.at();
            case BAD -> "bad at " + box.at();
        };
    }
}
