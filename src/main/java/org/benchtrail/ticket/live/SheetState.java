package org.benchtrail.ticket.live;

import java.util.List;

/**
 * How a sheet stands, told to somebody who has it open.
 *
 * @param version number of its last entry
 * @param others names of those who have it open too
 */
public record SheetState(int version, List<String> others) {}
