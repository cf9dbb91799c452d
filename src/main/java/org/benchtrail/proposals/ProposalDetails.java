package org.benchtrail.proposals;

import java.util.List;

/**
 * A proposal with what it would change.
 *
 * @param differences none once it is decided
 * @param obstacle why it cannot be made any more, and what to do; empty if it can
 */
public record ProposalDetails(ProposalView proposal, List<Difference> differences, String obstacle) {}
