/** The description of the API (OpenAPI 3.1), made from the endpoints and records themselves. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.description;
