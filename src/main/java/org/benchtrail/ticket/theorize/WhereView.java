package org.benchtrail.ticket.theorize;

import io.quarkus.qute.RawString;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.benchtrail.core.diagnosis.Words;
import org.benchtrail.core.diagnosis.path.Localisation;
import org.benchtrail.core.diagnosis.path.Segment;
import org.benchtrail.core.diagnosis.path.Strip;
import org.benchtrail.platform.chart.SvgStrip;

/**
 * Where the fault is, in plain words and as a drawing.
 *
 * @param leading most likely where, in one sentence
 * @param outside the rest in one line; empty if nothing is worth saying
 * @param strips the paths with what was measured on them
 * @param questions whether something is there at all
 */
public record WhereView(String leading, String outside, List<StripView> strips, List<PresenceQuestion> questions) {
    private static final double WORTH_SAYING = 0.1;
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
    public record PlaceView(
            int number, String name, String chance, long percent, boolean meant, Strip.Mark mark, String measured) {}

    /** @param id by which the answer is sent */
    public record PresenceQuestion(String id, String words) {}

    static WhereView of(Localisation where) {
        List<Strip> strips = where.strips();
        return new WhereView(
                leading(where, strips),
                outside(where),
                strips.stream().map(WhereView::strip).toList(),
                where.questions().stream().map(WhereView::question).toList());
    }

    /** Whether the category's paths are described. */
    public boolean isDrawn() {
        return !strips.isEmpty();
    }

    private static PresenceQuestion question(Segment s) {
        return new PresenceQuestion("there:" + s.id(), s.present().ask());
    }

    private static String leading(Localisation where, List<Strip> strips) {
        return where.stretch()
                .map(t -> {
                    List<Strip.Box> boxes = strips.stream()
                            .filter(s -> s.path().equals(t.path()))
                            .flatMap(s -> s.boxes().stream())
                            .toList();
                    return "Most likely " + between(boxes) + ", " + Words.chance(t.mass()) + ".";
                })
                .orElse("Not placed yet: nothing recorded narrows it down to a part of the way.");
    }

    /** A single place by its name, a run by what lies at its two ends. */
    private static String between(List<Strip.Box> boxes) {
        List<Strip.Box> meant = boxes.stream().filter(Strip.Box::meant).toList();
        Strip.Box first = meant.get(0);
        Strip.Box last = meant.get(meant.size() - 1);
        if (meant.size() == 1) {
            return "here: " + first.name();
        }
        return "between " + first.name() + " and " + last.name();
    }

    private static String outside(Localisation where) {
        List<String> parts = new ArrayList<>();
        if (where.outside() >= WORTH_SAYING) {
            parts.add("outside all of these places " + Words.chance(where.outside()));
        }
        if (where.unnamed() >= WORTH_SAYING) {
            parts.add(
                    "something that the catalogue does not list, in whatever place, " + Words.chance(where.unnamed()));
        }
        String all = String.join("; ", parts);
        return all.isEmpty() ? "" : all.substring(0, 1).toUpperCase(Locale.ROOT) + all.substring(1) + ".";
    }

    private static StripView strip(Strip strip) {
        List<PlaceView> places = new ArrayList<>();
        for (Strip.Box box : strip.boxes()) {
            places.add(new PlaceView(
                    places.size() + 1,
                    box.name(),
                    Words.chance(box.mass()),
                    Math.max(1, Math.min(99, Math.round(PERCENT * box.mass()))),
                    box.meant(),
                    box.after(),
                    measured(box)));
        }
        return new StripView(strip.title(), drawing(strip), places);
    }

    private static RawString drawing(Strip strip) {
        List<SvgStrip.Box> boxes = strip.boxes().stream()
                .map(b -> new SvgStrip.Box(b.mass(), b.meant(), between(b.after())))
                .toList();
        return SvgStrip.draw(boxes, strip.title() + ", place by place; the list below says the same");
    }

    private static SvgStrip.Between between(Strip.Mark mark) {
        return switch (mark) {
            case NO_POINT, NOT_MEASURED -> SvgStrip.Between.NOTHING;
            case GOOD -> SvgStrip.Between.GOOD;
            case BAD -> SvgStrip.Between.BAD;
        };
    }

    private static String measured(Strip.Box box) {
        return switch (box.after()) {
            case NO_POINT, NOT_MEASURED -> "";
            case GOOD -> "good at " + box.at();
            case BAD -> "bad at " + box.at();
        };
    }
}
