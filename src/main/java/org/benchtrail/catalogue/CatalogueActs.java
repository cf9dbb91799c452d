package org.benchtrail.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.jspecify.annotations.Nullable;

/** What a supervisor does to the catalogue. Every change is a new version; none is ever altered. */
@ApplicationScoped
@Transactional
public class CatalogueActs {
    private static final int LONGEST_NOTE = 500;
    private static final int LONGEST_TEXT = 1_000_000;

    private final Versions versions;
    private final Catalogues catalogues;
    private final Instance<Relearning> relearning;

    CatalogueActs(Versions versions, Catalogues catalogues, Instance<Relearning> relearning) {
        this.versions = versions;
        this.catalogues = catalogues;
        this.relearning = relearning;
    }

    /**
     * What a text would change.
     *
     * @param faults why it cannot be taken; then there are no changes
     * @param shifts figures that rankings are made with, the largest first
     */
    public record Draft(List<CatalogueFile.Fault> faults, List<Change> changes, List<ShiftLine> shifts) {
        public boolean acceptable() {
            return faults.isEmpty();
        }
    }

    /** Reads a text without storing anything. */
    public Draft check(String text, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        CatalogueFile file = read(normal(text));
        if (file.catalogue().isEmpty()) {
            return new Draft(file.faults(), List.of(), List.of());
        }
        VersionRow last = versions.row(versions.last());
        Map<String, Learned> next = figures(file.catalogue().get(), last);
        return new Draft(
                List.of(),
                Change.between(Versions.practice(last), file.catalogue().get()),
                ShiftLine.between(catalogues.version(last.number).figures(), next));
    }

    /**
     * Makes a version of a text. What was learned is learned again on it, from the same cases.
     *
     * @param base version that the text was begun from
     * @throws Invalid with every fault by row, or if another version was made meanwhile; nothing is stored
     */
    public VersionView save(int base, String text, String note, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        requireNote(note);
        String yaml = normal(text);
        CatalogueFile file = read(yaml);
        Catalogue practice = file.catalogue()
                .orElseThrow(() -> new Invalid(file.faults().stream()
                        .map(f -> new Invalid.Problem("row " + f.row(), told(f)))
                        .toList()));
        VersionRow last = latest(base);
        if (yaml.equals(last.practice)) {
            throw new Invalid("text", "Change something first: this is what version " + base + " says.");
        }
        VersionRow row = new VersionRow();
        row.practice = yaml;
        row.origin = yaml.equals(CatalogueFile.deliveredText()) ? VersionOrigin.DELIVERED : VersionOrigin.EDITED;
        row.note = note.strip();
        row.basis = last.basis;
        row.figures = last.basis == null ? null : FiguresJson.write(figures(practice, last));
        return versions.append(row, actor.account()).view();
    }

    private static String told(CatalogueFile.Fault f) {
        return f.field().isEmpty() ? f.reason() : f.field() + ": " + f.reason();
    }

    /** Makes a version of figures learned on the practice catalogue in force. */
    public VersionView learned(int base, Map<String, Learned> figures, Basis basis, String note, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        requireNote(note);
        VersionRow row = new VersionRow();
        row.practice = latest(base).practice;
        row.origin = VersionOrigin.LEARNED;
        row.note = note.strip();
        row.figures = FiguresJson.write(figures);
        row.basis = FiguresJson.text(basis);
        return versions.append(row, actor.account()).view();
    }

    /** Goes back: makes a version that says, to the last digit, what an earlier one said. */
    public VersionView restore(int base, int number, String note, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        requireNote(note);
        VersionRow old = versions.row(number);
        latest(base);
        if (number == base) {
            throw new Invalid("number", "Version " + number + " is the one in force; choose an earlier one.");
        }
        VersionRow row = new VersionRow();
        row.practice = old.practice;
        row.figures = old.figures;
        row.basis = old.basis;
        row.origin = VersionOrigin.REVERSED;
        row.restores = number;
        row.note = note.strip();
        return versions.append(row, actor.account()).view();
    }

    /** Versions, newest first. */
    public List<VersionView> versions(int before, int most, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return versions.list(before, most).stream().map(VersionRow::view).toList();
    }

    public VersionView version(int number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return versions.row(number).view();
    }

    /** The practice catalogue of a version, as it was typed. */
    public String text(int number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return versions.row(number).practice;
    }

    /** The practice catalogue of a version. */
    public Catalogue practice(int number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        return Versions.practice(versions.row(number));
    }

    /** What the figures of a version were learned from; empty if it is practice alone. */
    public Optional<Basis> basis(int number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        @Nullable String basis = versions.row(number).basis;
        return Optional.ofNullable(basis).map(FiguresJson::basis);
    }

    /** The catalogue of this release, if no version was ever made of it. */
    public Optional<String> offered(Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        String delivered = CatalogueFile.deliveredText();
        return versions.isKnown(delivered) ? Optional.empty() : Optional.of(delivered);
    }

    private Map<String, Learned> figures(Catalogue practice, VersionRow last) {
        if (last.basis == null) {
            return CatalogueVersion.of(0, practice).figures();
        }
        return relearning.get().learn(practice, FiguresJson.basis(last.basis));
    }

    /** The version in force, to which nobody else can add until the transaction ends. */
    private VersionRow latest(int base) {
        versions.lock();
        VersionRow last = versions.row(versions.last());
        if (last.number != base) {
            throw new Invalid(
                    "base",
                    "Look at version " + last.number + " first: " + last.madeBy + " made it while you were working on "
                            + "version " + base + ".");
        }
        return last;
    }

    private static void requireNote(@Nullable String note) {
        new Invalid.Collector()
                .require(
                        note != null && !note.isBlank() && note.length() <= LONGEST_NOTE && PlainText.isText(note),
                        "note",
                        "Say in a few words why, for those who look at the list of versions later.")
                .throwIfAny();
    }

    private static CatalogueFile read(String yaml) {
        if (yaml.length() > LONGEST_TEXT || !PlainText.isText(yaml)) {
            String reason = "give plain text of at most " + LONGEST_TEXT + " characters, without control characters";
            return new CatalogueFile(Optional.empty(), List.of(new CatalogueFile.Fault(1, "", reason)));
        }
        return CatalogueFile.read(yaml);
    }

    /** A browser sends its own line ends. */
    private static String normal(@Nullable String text) {
        return text == null ? "" : text.replace("\r\n", "\n");
    }
}
