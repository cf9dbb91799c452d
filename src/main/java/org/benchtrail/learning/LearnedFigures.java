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
import org.benchtrail.catalogue.Relearning;
import org.benchtrail.catalogue.ShiftLine;
import org.benchtrail.catalogue.VersionOrigin;
import org.benchtrail.catalogue.VersionView;
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
import org.jspecify.annotations.Nullable;

/**
 * Figures learned from this site's accepted cases. Always from the whole list and the practice catalogue, never from figures
 * learned before: a case that is withdrawn leaves nothing behind.
 */
@ApplicationScoped
@Transactional
public class LearnedFigures implements Relearning {
    /** How long what was looked at may be applied. */
    private static final Duration GOOD_FOR = Duration.ofDays(1);

    private final LearningCases cases;
    private final CatalogueActs catalogue;
    private final Catalogues catalogues;
    private final Clock clock;

    LearnedFigures(LearningCases cases, CatalogueActs catalogue, Catalogues catalogues, Clock clock) {
        this.cases = cases;
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
        return made(at, actor).preview();
    }

    private record Made(Map<String, Learned> figures, LearningBasis basis, LearningPreview preview) {}

    private Made made(Instant at, Actor actor) {
        int base = catalogues.inForce().number();
        Catalogue practice = catalogue.practice(base, actor);
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
     * Makes a version of exactly what was previewed.
     *
     * @param base version that the preview was held against
     * @param at moment of the preview
     * @param approved whether the large changes are agreed to
     * @throws Invalid if cases or catalogue changed since, a large change is not agreed to, or nothing would change
     */
    public VersionView apply(
            int base, @Nullable Instant at, String fingerprint, boolean approved, String note, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        Instant now = clock.instant();
        if (at == null || at.isAfter(now) || at.isBefore(now.minus(GOOD_FOR))) {
            throw new Invalid("at", "Look again at what would change: this view of it is too old.");
        }
        Made made = made(at, actor);
        LearningPreview preview = made.preview();
        new Invalid.Collector()
                .require(
                        preview.base() == base && preview.fingerprint().equals(fingerprint),
                        "fingerprint",
                        "Look again at what would change: cases or catalogue have changed since.")
                .require(!preview.shifts().isEmpty(), "cases", "Accept or withdraw a case first: nothing would change.")
                .require(
                        approved || preview.waitingForApproval() == 0,
                        "approved",
                        "Tick that you agree to the large changes, or withdraw the cases that cause them.")
                .throwIfAny();
        return catalogue.learned(base, made.figures(), made.basis(), note, actor);
    }

    /** Whether the version in force was made by learning, so that it can be undone. */
    public boolean canUndo(Actor actor) {
        return catalogue.version(catalogues.inForce().number(), actor).origin() == VersionOrigin.LEARNED;
    }

    /** Restores, to the last digit, the version before the last learning. The cases stay accepted. */
    public VersionView undo(int base, String note, Actor actor) {
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
