package org.benchtrail.learning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.diagnosis.Calibration;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.learning.TicketCase;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;

/**
 * How often the cause that was given 70 % was right. A forecast is the last ranking shown before the decisive test, so that it
 * was made before its own case could be learned from.
 */
@ApplicationScoped
@Transactional
public class CalibrationQueries {
    private static final int LEAST_FOR_BETA = 50;

    private final LearningCases cases;
    private final Catalogues catalogues;

    CalibrationQueries(LearningCases cases, Catalogues catalogues) {
        this.cases = cases;
        this.catalogues = catalogues;
    }

    /** @param category id; empty for all */
    public CalibrationView view(String category, Actor actor) {
        Permissions.require(Permission.KEEP_CATALOGUE, actor);
        List<TicketCase> accepted = cases.accepted().stream()
                .map(AcceptedCase::made)
                .filter(c -> category.isEmpty() || c.category().equals(category))
                .toList();
        List<Calibration.Forecast> forecasts = accepted.stream()
                .flatMap(c -> shown(c).map(s -> s.forecast(c.cause())))
                .toList();
        List<Calibration.Replay> replays = accepted.stream()
                .flatMap(c -> shown(c).flatMap(s -> replay(c, s).stream()))
                .toList();
        List<Integer> versions = accepted.stream()
                .flatMap(CalibrationQueries::shown)
                .map(TicketCase.ShownRanking::catalogue)
                .distinct()
                .sorted()
                .toList();
        return new CalibrationView(
                category,
                accepted.size(),
                forecasts.isEmpty() ? null : Calibration.figures(forecasts),
                replays.size() < LEAST_FOR_BETA ? null : (Double) Calibration.beta(replays),
                versions);
    }

    private static Stream<TicketCase.ShownRanking> shown(TicketCase c) {
        return Stream.ofNullable(c.shown());
    }

    /** The case as it would be ranked again; empty if the version it was ranked with does not know it. */
    private Optional<Calibration.Replay> replay(TicketCase c, TicketCase.ShownRanking shown) {
        Optional<Model> model = catalogues.version(shown.catalogue()).model(c.category());
        try {
            model.ifPresent(m -> {
                Ranking.of(m, c.evidenceShown());
                m.index(c.cause());
            });
            return model.map(m -> new Calibration.Replay(m, c.evidenceShown(), c.cause()));
        } catch (Invalid unknownThere) {
            return Optional.empty();
        }
    }
}
