package org.benchtrail.ticket.form;

import java.time.ZoneId;
import java.util.Optional;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.measure.LimitLibrary;

/**
 * What forms refer to beside the sheet.
 *
 * @param category everything that can be answered on the ticket, and every cause; empty if the catalogue has nothing for it
 * @param zone in which moments are typed
 */
public record FormContext(Optional<CauseCategory> category, LimitLibrary limits, ZoneId zone) {}
