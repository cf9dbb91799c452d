package org.benchtrail.ticket.form;

import java.time.ZoneId;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.measure.LimitLibrary;

/**
 * What forms refer to beside the sheet.
 *
 * @param model the causes and findings of the ticket's category; empty if the catalogue has none
 * @param zone in which moments are typed
 */
public record FormContext(Optional<Model> model, LimitLibrary limits, ZoneId zone) {}
