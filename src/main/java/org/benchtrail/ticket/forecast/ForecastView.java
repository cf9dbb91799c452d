package org.benchtrail.ticket.forecast;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.training.ForecastContent;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.ticket.Viewing;
import org.jspecify.annotations.Nullable;

/**
 * The forecast that is due on a ticket.
 *
 * @param number of the ticket
 * @param version of the sheet
 * @param kind of the forecast
 * @param own whether it is the viewer's; else the viewer may skip it for whoever has the ticket
 * @param person account of whose it is
 * @param name of whose it is
 * @param held whether that person has the ticket; nobody forecasts before taking it
 * @param missing what has to be known first
 * @param causes to choose from, by name
 * @param tests to choose from, by name
 * @param before what the viewer said last on this ticket, with which the form begins; null if nothing
 */
public record ForecastView(
        String number,
        int version,
        ForecastKind kind,
        boolean own,
        String person,
        String name,
        boolean held,
        List<Missing> missing,
        List<Option> causes,
        List<Option> tests,
        @Nullable ForecastContent before) {
    /** Causes that the form takes. */
    public static final int MOST = 12;

    private static final int ROWS = 4;

    /** Empty where none is due, or it is no matter of the viewer's. */
    public static Optional<ForecastView> of(
            Viewing viewing, Optional<CauseCategory> category, EarlierForecast earlier) {
        JobSheet sheet = viewing.sheet();
        Actor viewer = viewing.viewer();
        if (Sight.of(sheet, viewer) instanceof Sight.Veiled veiled) {
            return Optional.of(of(
                    viewing,
                    veiled.due(),
                    viewer,
                    category,
                    earlier.of(TicketNumber.parse(sheet.opened().ticket()), viewer)
                            .orElse(null)));
        }
        String assignee = sheet.course().assignee();
        if (assignee == null || !skipsForOthers(viewer)) {
            return Optional.empty();
        }
        Actor theirs =
                new Actor(assignee, viewing.name(assignee), sheet.course().assigneeRoles());
        return Sight.of(sheet, theirs) instanceof Sight.Veiled veiled
                ? Optional.of(of(viewing, veiled.due(), theirs, Optional.empty(), null))
                : Optional.empty();
    }

    private static boolean skipsForOthers(Actor viewer) {
        return viewer.is(Role.MENTOR) || viewer.is(Role.SUPERVISOR);
    }

    private static ForecastView of(
            Viewing viewing,
            ForecastKind due,
            Actor whose,
            Optional<CauseCategory> category,
            @Nullable ForecastContent before) {
        JobSheet sheet = viewing.sheet();
        String number = sheet.opened().ticket();
        Situation now = new Situation(sheet, viewing.policy(), viewing.now(), Move.ADVANCE, "");
        return new ForecastView(
                number,
                sheet.entries(),
                due,
                whose.account().equals(viewing.viewer().account()),
                whose.account(),
                viewing.name(whose.account()),
                whose.account().equals(sheet.course().assignee()),
                due == ForecastKind.CAUSES_EARLY ? Sight.beforeForecast(now) : List.of(),
                category.stream()
                        .flatMap(c -> c.causes().stream())
                        .map(c -> new Option(c.id(), c.name()))
                        .sorted(Comparator.comparing(Option::words))
                        .toList(),
                category.stream()
                        .flatMap(c -> c.findings().stream())
                        .map(f -> new Option(f.id(), f.label()))
                        .sorted(Comparator.comparing(Option::words))
                        .toList(),
                before);
    }

    /** Whether the form can be filled in now. */
    public boolean isReady() {
        return own && held && missing.isEmpty() && !causes.isEmpty();
    }

    /** Rows for causes. */
    public List<String> rows() {
        int said = before == null ? 0 : before.percents().size();
        return IntStream.rangeClosed(1, Math.max(ROWS, said))
                .mapToObj(String::valueOf)
                .toList();
    }

    /** The form begins with what was said before, the likeliest first; something else is what is left. */
    public void fill(FormValues values) {
        if (before == null || !isReady()) {
            return;
        }
        List<Map.Entry<String, Integer>> said = before.percents().entrySet().stream()
                .filter(e -> causes.stream().anyMatch(c -> c.value().equals(e.getKey())))
                .sorted(Map.Entry.<String, Integer>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .toList();
        for (int i = 0; i < said.size(); i++) {
            values.set("cause." + (i + 1), said.get(i).getKey());
            values.set("percent." + (i + 1), said.get(i).getValue().toString());
        }
        values.set("nextTest", before.nextTest());
    }

    /** Whether it begins with what was said before. */
    public boolean begun() {
        return before != null;
    }

    public boolean isEarly() {
        return kind == ForecastKind.CAUSES_EARLY;
    }
}
