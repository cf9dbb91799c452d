package org.benchtrail.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.proposals.Agreement;
import org.benchtrail.proposals.Difference;
import org.jspecify.annotations.Nullable;

/** Makes versions of the catalogue, each on the one in force, once two people agree to it. */
@ApplicationScoped
@Transactional(Transactional.TxType.MANDATORY)
public class NewVersions {
    private final Versions versions;
    private final Catalogues catalogues;
    private final Instance<Relearning> relearning;

    NewVersions(Versions versions, Catalogues catalogues, Instance<Relearning> relearning) {
        this.versions = versions;
        this.catalogues = catalogues;
        this.relearning = relearning;
    }

    /**
     * Makes a version of a text. What was learned is learned again on it, from the same cases.
     *
     * @throws Invalid with every fault by row, or if {@code base} is not in force, or says the same
     */
    VersionView edited(int base, String yaml, Agreement agreed) {
        VersionRow last = latest(base);
        Catalogue practice = practice(last, yaml);
        VersionRow row = new VersionRow();
        row.practice = yaml;
        row.origin = yaml.equals(CatalogueFile.deliveredText()) ? VersionOrigin.DELIVERED : VersionOrigin.EDITED;
        row.basis = last.basis;
        row.figures = last.basis == null ? null : FiguresJson.write(figures(practice, last));
        return append(row, agreed);
    }

    /** What a text would change. */
    List<Difference> ofText(int base, String yaml) {
        VersionRow last = latest(base);
        Catalogue practice = practice(last, yaml);
        return differences(last, practice, figures(practice, last));
    }

    private static Catalogue practice(VersionRow last, String yaml) {
        CatalogueFile file = CatalogueFile.read(yaml);
        Catalogue practice = file.catalogue()
                .orElseThrow(() -> new Invalid(file.faults().stream()
                        .map(f -> new Invalid.Problem("row " + f.row(), told(f)))
                        .toList()));
        if (yaml.equals(last.practice)) {
            throw new Invalid("text", "Change something first: this is what version " + last.number + " says.");
        }
        return practice;
    }

    private static String told(CatalogueFile.Fault f) {
        return f.field().isEmpty() ? f.reason() : f.field() + ": " + f.reason();
    }

    /** Goes back: makes a version that says, to the last digit, what an earlier one said. */
    VersionView returned(int base, int number, Agreement agreed) {
        VersionRow old = earlier(base, number);
        VersionRow row = new VersionRow();
        row.practice = old.practice;
        row.figures = old.figures;
        row.basis = old.basis;
        row.origin = VersionOrigin.REVERSED;
        row.restores = number;
        return append(row, agreed);
    }

    /** What going back would change. */
    List<Difference> ofReturn(int base, int number) {
        VersionRow old = earlier(base, number);
        return differences(
                versions.row(base),
                Versions.practice(old),
                catalogues.version(number).figures());
    }

    private VersionRow earlier(int base, int number) {
        VersionRow old = versions.row(number);
        latest(base);
        if (number == base) {
            throw new Invalid("number", "Version " + number + " is the one in force; choose an earlier one.");
        }
        return old;
    }

    /** Makes a version of figures learned on the practice catalogue in force. */
    public VersionView learned(int base, Map<String, Learned> figures, LearningBasis basis, Agreement agreed) {
        VersionRow row = new VersionRow();
        row.practice = latest(base).practice;
        row.origin = VersionOrigin.LEARNED;
        row.figures = FiguresJson.write(figures);
        row.basis = FiguresJson.text(basis);
        return append(row, agreed);
    }

    /** What figures would change against those in force. */
    public List<Difference> ofFigures(Map<String, Learned> figures) {
        return shifts(catalogues.inForce().figures(), figures);
    }

    /** Figures of a practice catalogue, learned from what the version was learned from. */
    Map<String, Learned> figures(Catalogue practice, VersionRow last) {
        @Nullable String basis = last.basis;
        return basis == null
                ? CatalogueVersion.practice(practice)
                : relearning.get().learn(practice, FiguresJson.basis(basis));
    }

    private List<Difference> differences(VersionRow last, Catalogue practice, Map<String, Learned> figures) {
        List<Difference> all = new ArrayList<>();
        EntryChange.between(Versions.practice(last), practice)
                .forEach(c -> all.add(new Difference(c.entry(), c.before(), c.after())));
        all.addAll(shifts(catalogues.version(last.number).figures(), figures));
        return all;
    }

    private static List<Difference> shifts(Map<String, Learned> before, Map<String, Learned> after) {
        return ShiftLine.between(before, after).stream()
                .map(s -> new Difference(s.words(), s.beforeText(), s.afterText()))
                .toList();
    }

    private VersionView append(VersionRow row, Agreement agreed) {
        row.note = agreed.note();
        row.confirmedBy = agreed.confirmer();
        return versions.append(row, agreed.proposer()).view();
    }

    /** The version in force, to which nobody else can add until the transaction ends. */
    private VersionRow latest(int base) {
        versions.lock();
        VersionRow last = versions.row(versions.last());
        if (last.number != base) {
            throw new Invalid(
                    "base",
                    "Look at version " + last.number + " first: " + last.madeBy + " made it since version " + base
                            + ", on which this was begun.");
        }
        return last;
    }
}
