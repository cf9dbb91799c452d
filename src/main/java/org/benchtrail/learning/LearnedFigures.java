package org.benchtrail.learning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.benchtrail.catalogue.CatalogueActs;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.catalogue.FiguresJson;
import org.benchtrail.catalogue.LearningBasis;
import org.benchtrail.catalogue.NewVersions;
import org.benchtrail.catalogue.Relearning;
import org.benchtrail.catalogue.ShiftLine;
import org.benchtrail.catalogue.VersionOrigin;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Catalogue;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.ClosedCase;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.core.diagnosis.Learning;
import org.benchtrail.core.diagnosis.LearningSettings;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.proposals.Agreement;
import org.benchtrail.proposals.Difference;
import org.benchtrail.proposals.ProposalActs;
import org.benchtrail.proposals.ProposalView;
import org.benchtrail.proposals.ProposedChange;
import org.jspecify.annotations.Nullable;

/**
 * Figures learned from this site's accepted cases. Always from the whole list and the practice catalogue, never from figures
 * learned before: a case that is withdrawn leaves nothing behind.
 */
@ApplicationScoped
@Transactional
public class LearnedFigures implements Relearning, ProposedChange<LearnedFigures.LearnedChange> {
    /** How long what was looked at may be applied. */
    private static final Duration GOOD_FOR = Duration.ofDays(1);

    private final LearningCases cases;
    private final CatalogueActs catalogue;
    private final Catalogues catalogues;
    private final NewVersions newVersions;
    private final ProposalActs proposals;
    private final Clock clock;

    LearnedFigures(
            LearningCases cases,
            CatalogueActs catalogue,
            Catalogues catalogues,
            NewVersions newVersions,
            ProposalActs proposals,
            Clock clock) {
        this.cases = cases;
        this.newVersions = newVersions;
        this.proposals = proposals;
        this.catalogue = catalogue;
        this.catalogues = catalogues;
        this.clock = clock;
    }

    @Override
    public Map<String, Learned> learn(Catalogue practice, LearningBasis basis) {
        return learn(practice, cases.withIds(basis.cases()), basis.at());
    }

    private static Map<String, Learned> learn(Catalogue practice, List<AcceptedCase> accepted, Instant at) {
        Map<String, Learned> figures = new TreeMap<>();
        for (CauseCategory c : practice.categories()) {
            List<ClosedCase> known = accepted.stream()
                    .filter(a -> a.made().category().equals(c.id()))
                    .flatMap(a -> a.in(c).stream())
                    .toList();
            figures.put(c.id(), Learning.learn(c, known, at, LearningSettings.STANDARD));
        }
        return figures;
    }

    /** What learning now would change; stores nothing. */
    public LearningPreview preview(Actor actor) {
        return preview(clock.instant(), actor);
    }

    /** What learning at that moment would change. */
    LearningPreview preview(Instant at, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        return made(at).preview();
    }

    private record Made(Map<String, Learned> figures, LearningBasis basis, LearningPreview preview) {}

    private Made made(Instant at) {
        int base = catalogues.inForce().number();
        Catalogue practice = catalogue.practice(base);
        List<AcceptedCase> accepted = cases.accepted();
        Map<String, Learned> figures = learn(practice, accepted, at);
        long unknown = accepted.stream()
                .filter(a ->
                        practice.category(a.made().category()).flatMap(a::in).isEmpty())
                .count();
        LearningPreview preview = new LearningPreview(
                base,
                at,
                fingerprint(figures),
                accepted.size(),
                (int) unknown,
                ShiftLine.between(catalogues.version(base).figures(), figures));
        return new Made(
                figures,
                new LearningBasis(at, accepted.stream().map(AcceptedCase::id).toList()),
                preview);
    }

    private static String fingerprint(Map<String, Learned> figures) {
        try {
            byte[] text = FiguresJson.write(figures).getBytes(StandardCharsets.UTF_8);
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /**
     * Proposes a version of exactly what was previewed.
     *
     * @param base version that the preview was held against
     * @param at moment of the preview
     * @param approved whether the large changes are agreed to
     * @throws Invalid if cases or catalogue changed since, a large change is not agreed to, or nothing would change
     */
    public ProposalView apply(
            int base, @Nullable Instant at, String fingerprint, boolean approved, String note, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        Instant now = clock.instant();
        if (at == null || at.isAfter(now) || at.isBefore(now.minus(GOOD_FOR))) {
            throw new Invalid("at", "Look again at what would change: this view of it is too old.");
        }
        LearningPreview preview = same(base, at, fingerprint).preview();
        new Invalid.Collector()
                .require(!preview.shifts().isEmpty(), "cases", "Accept or withdraw a case first: nothing would change.")
                .require(
                        approved || preview.waitingForApproval() == 0,
                        "approved",
                        "Tick that you agree to the large changes, or withdraw the cases that cause them.")
                .throwIfAny();
        return proposals.propose(this, new LearnedChange(base, at, fingerprint), note, actor);
    }

    /** @throws Invalid if cases or catalogue changed since */
    private Made same(int base, Instant at, String fingerprint) {
        Made made = made(at);
        new Invalid.Collector()
                .require(
                        made.preview().base() == base
                                && made.preview().fingerprint().equals(fingerprint),
                        "fingerprint",
                        "Look again at what would change: cases or catalogue have changed since.")
                .throwIfAny();
        return made;
    }

    /**
     * What is proposed.
     *
     * @param base version in force
     * @param at moment of the preview
     * @param fingerprint of the figures that it showed
     */
    public record LearnedChange(int base, Instant at, String fingerprint) {}

    @Override
    public String name() {
        return "learned-figures";
    }

    @Override
    public Class<LearnedChange> change() {
        return LearnedChange.class;
    }

    @Override
    public String words(LearnedChange change) {
        return "Apply learned figures to the catalogue, version " + change.base();
    }

    @Override
    public List<Difference> differences(LearnedChange change) {
        return newVersions.ofFigures(
                same(change.base(), change.at(), change.fingerprint()).figures());
    }

    @Override
    public String make(LearnedChange change, Agreement agreed) {
        Made made = same(change.base(), change.at(), change.fingerprint());
        return newVersions
                .learned(change.base(), made.figures(), made.basis(), agreed)
                .page();
    }

    /** Whether the version in force was made by learning, so that it can be undone. */
    public boolean canUndo(Actor actor) {
        return catalogue.version(catalogues.inForce().number(), actor).origin() == VersionOrigin.LEARNED;
    }

    /** Proposes to restore, to the last digit, the version before the last learning. The cases stay accepted. */
    public ProposalView undo(int base, String note, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        if (!canUndo(actor)) {
            throw new Invalid(
                    "base",
                    "The version in force was not made by learning: choose on the list of versions which to go back to.");
        }
        return catalogue.restore(base, base - 1, note, actor);
    }

    /** Accepted cases that the version in force was learned from; empty if it is practice alone. */
    public Optional<LearningBasis> basis(Actor actor) {
        return catalogue.basis(catalogues.inForce().number(), actor);
    }
}
