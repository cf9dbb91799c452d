package org.benchtrail.limits;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;

/** The rows of the shop's limits. */
@ApplicationScoped
class SiteLimits implements PanacheRepositoryBase<SiteLimit, String> {}
