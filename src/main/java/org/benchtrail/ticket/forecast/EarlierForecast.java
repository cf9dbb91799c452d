package org.benchtrail.ticket.forecast;

import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.training.ForecastContent;

/** What somebody forecast before, for the form in which they forecast again. */
public interface EarlierForecast {
    /** The viewer's own latest one on that ticket, of nobody else; empty if there is none, or it was erased. */
    Optional<ForecastContent> of(TicketNumber number, Actor viewer);
}
