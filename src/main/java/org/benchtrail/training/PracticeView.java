package org.benchtrail.training;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.practice.job.Truth.Played;

/**
 * The bench of a practice job: what can be done with the device, and what was.
 *
 * @param time of the job, and the minutes worked and waited
 * @param tested whether it is part of a test of the coach
 * @param last what the last act showed; empty before the first
 */
record PracticeView(
        int id,
        int version,
        String time,
        String worked,
        String last,
        List<Group> groups,
        List<Deed> waiting,
        List<Row> done,
        boolean tested) {
    record Group(String title, List<Offer> acts) {}

    record Offer(String id, String label, String minutes) {}

    /** @param harm what it did besides; empty if nothing */
    record Row(int place, String what, String answer, String minutes, List<String> harm) {}

    static PracticeView of(PracticeJob job, Played played, String time) {
        List<Group> groups = new ArrayList<>();
        for (DeviceAct.Way way : DeviceAct.Way.values()) {
            List<Offer> acts = job.truth().family().acts().stream()
                    .filter(a -> a.way() == way)
                    .map(a -> new Offer(a.id(), a.label(), minutes(a.minutes())))
                    .toList();
            groups.add(new Group(way.words(), acts));
        }
        List<Row> rows = rows(played);
        String last = rows.isEmpty()
                ? ""
                : rows.get(rows.size() - 1).what() + ": "
                        + rows.get(rows.size() - 1).answer();
        return new PracticeView(
                job.id(),
                job.trail().size(),
                time,
                worked(played),
                last,
                groups,
                Deed.WAITING,
                rows,
                job.coached() != null);
    }

    static String worked(Played played) {
        return minutes(played.clock().handsOn()) + " worked, "
                + minutes(played.clock().waiting()) + " waited";
    }

    static List<Row> rows(Played played) {
        List<Row> rows = new ArrayList<>();
        for (Truth.Step step : played.steps()) {
            rows.add(new Row(
                    rows.size() + 1,
                    step.act().way().words() + " " + step.act().label(),
                    step.answer().words(),
                    minutes(step.answer().handsOn()),
                    step.answer().harm().stream().map(h -> h.sentence()).toList()));
        }
        return rows;
    }

    static String minutes(double minutes) {
        return String.format(Locale.ROOT, "%.0f min", minutes);
    }
}
