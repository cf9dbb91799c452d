package org.benchtrail.platform.problem;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ResourceInfo;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.platform.RequestKind;
import org.jboss.resteasy.reactive.RestQuery;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jspecify.annotations.Nullable;

/** A program that asks the API with a parameter that nobody reads is told so: a misspelt filter would answer with everything. */
public class StrictQuery {
    private final Map<Method, Set<String>> known = new ConcurrentHashMap<>();

    @ServerRequestFilter
    public jakarta.ws.rs.core.@Nullable Response check(
            ContainerRequestContext request, ResourceInfo resource, RoutingContext routing) {
        if (!RequestKind.isApi(routing) || resource.getResourceMethod() == null) {
            return null;
        }
        Set<String> names = known.computeIfAbsent(resource.getResourceMethod(), StrictQuery::names);
        List<Invalid.Problem> unknown = request.getUriInfo().getQueryParameters().keySet().stream()
                .filter(name -> !names.contains(name))
                .sorted()
                .map(name -> new Invalid.Problem(
                        name,
                        "There is no such parameter here; there are: "
                                + names.stream().sorted().collect(Collectors.joining(", ")) + "."))
                .toList();
        return unknown.isEmpty()
                ? null
                : Problems.answer(
                        routing,
                        Problem.of(ProblemKind.MALFORMED, "A parameter is not known here.")
                                .withErrors(unknown));
    }

    private static Set<String> names(Method endpoint) {
        return Stream.of(endpoint.getParameters())
                .filter(p -> p.isAnnotationPresent(RestQuery.class) || p.isAnnotationPresent(QueryParam.class))
                .map(StrictQuery::name)
                .collect(Collectors.toUnmodifiableSet());
    }

    private static String name(Parameter parameter) {
        RestQuery ours = parameter.getAnnotation(RestQuery.class);
        if (ours == null) {
            return parameter.getAnnotation(QueryParam.class).value();
        }
        return ours.value().isEmpty() ? parameter.getName() : ours.value();
    }
}
