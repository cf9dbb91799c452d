package org.benchtrail.core.advice;

import java.time.Instant;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Channel;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.identify.FindingAnswered;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.jspecify.annotations.Nullable;

/** A job sheet as the tests of advice fill it, entry by entry, and a small invented part of a catalogue to hold it against. */
final class HeatSheet {
    private static final Instant START = Instant.parse("2031-03-03T08:00:00Z");

    /** Dust is put right at once, a board only with a backup, an approved change and a check that confirms it. */
    static final Model MODEL = new Model(
            new CauseCategory(
                    "heat",
                    "Overheating",
                    240,
                    List.of(),
                    List.of(
                            finding("dust", null, "no", "yes"),
                            finding("noise", null, "no", "yes"),
                            finding("hot", new Limits("degC", null, 95.0, 2, -20.0, 150.0), "inside", "above"),
                            finding("load", new Limits("%", null, 80.0, 1, 0.0, 500.0), "inside", "above")),
                    List.of(
                            cause("H1", "Dust", 3, "dust", repair(Risk.NONE, true)),
                            cause("H2", "Board", 1, "noise", repair(Risk.HIGH, false, "backup-done")),
                            cause("H3", "Room", 1, "hot", repair(Risk.NONE, true, "change-approved")),
                            cause("H4", "Load", 1, "load", repair(Risk.NONE, true, "hazard-cleared"))),
                    List.of()),
            ModelSettings.STANDARD);

    private JobSheet sheet;

    HeatSheet() {
        this(JobSheet.open(new Entry(
                stamp(1),
                new Opened(
                        "40718-6",
                        "Too hot",
                        "",
                        Category.HEAT,
                        "Workstation",
                        "Office",
                        1,
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.HINDERED,
                        "ines",
                        Set.of(Role.TECHNICIAN)))));
    }

    HeatSheet(JobSheet opened) {
        sheet = opened;
    }

    private static Finding finding(String id, @Nullable Limits limits, String... values) {
        Map<String, Double> background = new HashMap<>();
        Arrays.stream(values).forEach(v -> background.put(v, 1.0 / values.length));
        Finding.Kind kind = limits == null ? Finding.Kind.ANSWER : Finding.Kind.READING;
        return new Finding(id, id + "?", kind, List.of(values), background, 2, Risk.NONE, List.of(), null, limits);
    }

    private static Repair repair(Risk risk, boolean reversible, String... needs) {
        return new Repair("mend", 5, 5, 0.9, 0, risk, reversible, List.of(needs));
    }

    private static Cause cause(String id, String name, double weight, String shown, Repair repair) {
        boolean reading = shown.equals("hot") || shown.equals("load");
        Map<String, Double> values = reading ? Map.of("inside", 0.1, "above", 0.9) : Map.of("no", 0.1, "yes", 0.9);
        return new Cause(id, name, weight, List.of(new Deviation(shown, values)), "look", 1, repair, "");
    }

    static Stamp stamp(int entry) {
        return new Stamp(entry, START.plusSeconds(60L * entry), "ines", Set.of(Role.TECHNICIAN));
    }

    /** Nobody asks the method. */
    HeatSheet with(Fact... facts) {
        for (Fact fact : facts) {
            sheet = sheet.with(new Entry(stamp(sheet.entries() + 1), fact));
        }
        return this;
    }

    /** In one request. */
    HeatSheet withTogether(Fact... facts) {
        for (Fact fact : facts) {
            Stamp alone = stamp(sheet.entries() + 1);
            Origin one = new Origin(Channel.PAGE, "together", "policy", null);
            sheet = sheet.with(new Entry(new Stamp(alone.entry(), alone.at(), alone.by(), alone.roles(), one), fact));
        }
        return this;
    }

    JobSheet sheet() {
        return sheet;
    }

    int entries() {
        return sheet.entries();
    }

    static FindingAnswered answer(String finding, String value) {
        return new FindingAnswered(finding, finding + "?", value, Source.REPORTED);
    }

    static ReadingRecorded reading(
            String finding, String value, String unit, @Nullable String upper, @Nullable String accuracy) {
        return new ReadingRecorded(
                "reading",
                value,
                unit,
                "there",
                "",
                null,
                upper,
                upper == null ? "" : "label",
                accuracy,
                null,
                finding);
    }
}
