package org.benchtrail.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
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
import org.benchtrail.proposals.ProposalActs;
import org.benchtrail.proposals.ProposalView;
import org.jspecify.annotations.Nullable;

/** What a supervisor does to the catalogue. Every change is a new version, which takes two; none is ever altered. */
@ApplicationScoped
@Transactional
public class CatalogueActs {
    private static final int LONGEST_TEXT = 1_000_000;

    private final Versions versions;
    private final Catalogues catalogues;
    private final NewVersions newVersions;
    private final ProposalActs proposals;
    private final TextChange texts;
    private final ReturnChange returns;

    CatalogueActs(
            Versions versions,
            Catalogues catalogues,
            NewVersions newVersions,
            ProposalActs proposals,
            TextChange texts,
            ReturnChange returns) {
        this.versions = versions;
        this.catalogues = catalogues;
        this.newVersions = newVersions;
        this.proposals = proposals;
        this.texts = texts;
        this.returns = returns;
    }

    /**
     * What a text would change.
     *
     * @param faults why it cannot be taken; then there are no changes
     * @param shifts figures that rankings are made with, the largest first
     */
    public record CheckedText(List<CatalogueFile.Fault> faults, List<EntryChange> changes, List<ShiftLine> shifts) {
        public boolean acceptable() {
            return faults.isEmpty();
        }
    }

    /** Reads a text without storing anything. */
    public CheckedText check(String text, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        CatalogueFile file = read(normal(text));
        if (file.catalogue().isEmpty()) {
            return new CheckedText(file.faults(), List.of(), List.of());
        }
        VersionRow last = versions.row(versions.last());
        Map<String, Learned> next = newVersions.figures(file.catalogue().get(), last);
        return new CheckedText(
                List.of(),
                EntryChange.between(Versions.practice(last), file.catalogue().get()),
                ShiftLine.between(catalogues.version(last.number).figures(), next));
    }

    /**
     * Proposes a version of a text. What was learned will be learned again on it, from the same cases.
     *
     * @param base version that the text was begun from
     * @throws Invalid with every fault by row, or if another version was made meanwhile; nothing is stored
     */
    public ProposalView save(int base, String text, String note, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        String yaml = normal(text);
        CatalogueFile file = read(yaml);
        if (file.catalogue().isEmpty()) {
            throw new Invalid(file.faults().stream()
                    .map(f -> new Invalid.Problem("row " + f.row(), told(f)))
                    .toList());
        }
        return proposals.propose(texts, new TextChange.NewText(base, yaml), note, actor);
    }

    private static String told(CatalogueFile.Fault f) {
        return f.field().isEmpty() ? f.reason() : f.field() + ": " + f.reason();
    }

    /** Proposes to go back: a version that says, to the last digit, what an earlier one said. */
    public ProposalView restore(int base, int number, String note, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        return proposals.propose(returns, new ReturnChange.GoingBack(base, number), note, actor);
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
    public Catalogue practice(int number) {
        return Versions.practice(versions.row(number));
    }

    /** What the figures of a version were learned from; empty if it is practice alone. */
    public Optional<LearningBasis> basis(int number, Actor actor) {
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

    private static CatalogueFile read(String yaml) {
        if (yaml.length() > LONGEST_TEXT || !PlainText.isText(yaml)) {
            String reason = "give plain text of at most " + LONGEST_TEXT + " characters, without control characters";
            return CatalogueFile.refused(List.of(new CatalogueFile.Fault(1, "", reason)));
        }
        return CatalogueFile.read(yaml);
    }

    /** A browser sends its own line ends. */
    private static String normal(@Nullable String text) {
        return text == null ? "" : text.replace("\r\n", "\n");
    }
}
