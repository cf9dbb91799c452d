package org.benchtrail.core.advice;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.catalogue.CatalogueFile;
import org.benchtrail.catalogue.CatalogueVersion;
import org.benchtrail.catalogue.PathsFile;
import org.benchtrail.core.diagnosis.path.Localiser;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/**
 * Tickets in plain words, written by somebody who has not seen the catalogue, as a technician fills them into the forms of the
 * sheet; and beside them what the technician ticks, answers and thinks.
 */
final class PlainTickets {
    private static final String NOTHING = "nothing";

    private static final Map<String, Localiser> PLACES = CatalogueVersion.of(
                    1, CatalogueFile.delivered(), PathsFile.delivered())
            .localisers();
    private static final SheetReader READER = new SheetReader() {
        @Override
        public Optional<String> mains(JobSheet sheet) {
            return Optional.of("230");
        }

        @Override
        public Optional<Worked> again(BenchResultAttached attached) {
            return Optional.empty();
        }
    };

    private PlainTickets() {}

    /** Where a fault can be on such a ticket, by the delivered catalogue. */
    static Localiser places(HeatSheet sheet) {
        return PLACES.get(sheet.sheet().opened().category().catalogue());
    }

    /** By the delivered catalogue, at a site with 230 V. */
    static Diagnosis diagnosis(HeatSheet sheet) {
        return Diagnosis.of(sheet.sheet(), places(sheet), READER);
    }

    /** The rows of a file of tickets. */
    static List<Row> read(String resource) {
        List<Row> rows = new ArrayList<>();
        try (InputStream in = Objects.requireNonNull(PlainTickets.class.getResourceAsStream(resource))) {
            for (Object one : (Iterable<?>) new Yaml(new SafeConstructor(new LoaderOptions())).load(in)) {
                rows.add(new Row((Map<?, ?>) one));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rows;
    }

    /** Something with keys. */
    record Row(Map<?, ?> keys) {
        static Row of(Object value) {
            return new Row(value instanceof Map<?, ?> m ? m : Map.of());
        }

        String text(String key) {
            Object value = keys.get(key);
            return value == null
                    ? ""
                    : value instanceof List<?> list
                            ? String.join(
                                    "\n", list.stream().map(String::valueOf).toList())
                            : String.valueOf(value).strip();
        }

        Row row(String key) {
            return of(keys.get(key));
        }

        List<?> list(String key) {
            return keys.get(key) instanceof List<?> list ? list : List.of();
        }

        Stream<Map.Entry<String, String>> pairs(String key) {
            return row(key).keys().entrySet().stream()
                    .map(e -> Map.entry(String.valueOf(e.getKey()), String.valueOf(e.getValue())));
        }
    }

    static Category kind(String word) {
        return Stream.of(Category.values())
                .filter(c -> c.catalogue().equals(word) || c.name().equalsIgnoreCase(word))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(word));
    }

    /** The sheet after intake. */
    static HeatSheet sheet(Row ticket, Row note) {
        String kind = note.text("kind").isEmpty() ? ticket.text("kind") : note.text("kind");
        HeatSheet sheet = new HeatSheet(JobSheet.open(new Entry(
                HeatSheet.stamp(1),
                new Opened(
                        "40718-6",
                        cut(ticket.text("report"), 100),
                        "",
                        kind(kind),
                        cut(ticket.text("device"), 100),
                        "Office",
                        1,
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.HINDERED,
                        "ines",
                        Set.of(Role.TECHNICIAN)))));
        intake(ticket, note).forEach(sheet::with);
        return sheet;
    }

    private static List<Fact> intake(Row ticket, Row note) {
        Row told = ticket.row("answers");
        List<Fact> facts = new ArrayList<>(hazards(note));
        String how = told.text("constant_or_intermittent");
        boolean comesAndGoes = note.text("comesAndGoes").equals("true");
        String observable = said(told.text("looks_smells_sounds")).orElse(ticket.text("report"));
        facts.add(new SymptomRecorded(ticket.text("report"), observable, comesAndGoes));
        said(told.text("when_started")).ifPresent(when -> facts.add(new OnsetRecorded(true, cut(when, 200))));
        facts.add(changes(told.text("what_changed"), note));
        Scope scope = note.text("scope").isEmpty() ? Scope.ONE : Scope.valueOf(note.text("scope"));
        facts.add(new ScopeRecorded(scope, told.text("scope")));
        Reproduction tried = note.text("reproduced").isEmpty()
                ? (comesAndGoes ? Reproduction.INTERMITTENT : Reproduction.YES)
                : Reproduction.valueOf(note.text("reproduced"));
        facts.add(new ReproductionTried(
                tried, said(told.text("reproduce") + "\n" + how).orElse("tried")));
        said(told.text("tried_already")).ifPresent(t -> facts.add(new FindingRecorded(t, false)));
        said(told.text("messages")).ifPresent(t -> facts.add(new ExtractRecorded("what the device said", t)));
        ticket.list("readings").stream().map(Row::of).forEach(r -> facts.add(reading(r)));
        return facts;
    }

    private static List<Fact> hazards(Row note) {
        Map<Hazard, Boolean> present = new EnumMap<>(Hazard.class);
        for (Hazard h : Hazard.values()) {
            present.put(h, note.list("hazards").contains(h.name()));
        }
        HazardsScreened screened = new HazardsScreened(present);
        return screened.found().isEmpty()
                ? List.of(screened)
                : List.of(screened, new StopWorkCleared("Made safe", true));
    }

    private static ChangesAsked changes(String told, Row note) {
        Map<ChangeKind, ChangeAnswer> answers = new EnumMap<>(ChangeKind.class);
        ChangeAnswer rest = said(told).isPresent() ? ChangeAnswer.NO : ChangeAnswer.UNKNOWN;
        for (ChangeKind k : ChangeKind.values()) {
            boolean changed = note.list("changed").contains(k.name());
            answers.put(k, changed ? ChangeAnswer.YES : rest);
        }
        return new ChangesAsked(
                answers, said(told).orElse(answers.containsValue(ChangeAnswer.YES) ? "see report" : ""));
    }

    private static ReadingRecorded reading(Row r) {
        return new ReadingRecorded(
                r.text("quantity"),
                r.text("value"),
                r.text("unit").isEmpty() ? "count" : r.text("unit"),
                r.text("where").isEmpty() ? "device" : cut(r.text("where"), 120),
                "",
                null,
                null,
                "",
                null,
                null,
                r.text("finding").isEmpty() ? null : r.text("finding"));
    }

    private static Optional<String> said(String text) {
        String bare = text.strip();
        return Optional.of(bare)
                .filter(t -> !t.isEmpty() && !t.equalsIgnoreCase(NOTHING) && !t.equalsIgnoreCase("unknown"));
    }

    private static String cut(String text, int most) {
        String line = text.replace('\n', ' ').strip();
        return line.length() <= most ? line : line.substring(0, most);
    }
}
