package org.benchtrail.description;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.benchtrail.platform.RequestKind;
import org.benchtrail.ticket.api.ActSchemas;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.Components;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.Paths;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;
import org.jboss.jandex.IndexView;

/**
 * Completes what the framework finds: of the API alone, each operation with all that it answers, each calculation by itself. Done
 * while the program is built, not at each of its starts.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class ApiDescription implements OASFilter {
    private static final String TOKEN = "token";
    private static final String CALCULATION = "/api/bench/{id}";

    private static final ObjectMapper EXAMPLES =
            new ObjectMapper().setDefaultPropertyInclusion(JsonInclude.Include.NON_NULL);

    private static final Map<String, String> TAGS = Map.of(
            "Bench", "Calculations of the trade; nothing is stored.",
            "Catalogue", "The causes, and what speaks for each.",
            "Knowledge", "Known causes and the cases behind them.",
            "Learning", "Closed tickets judged as cases, and figures learned from them.",
            "Me", "The account behind the token.",
            "People", "Accounts and their roles.",
            "Proposals", "Changes that take two supervisors.",
            "Read in", "What devices say about themselves.",
            "Site", "Places, devices, calendar and policies.",
            "Tickets", "Tickets from report to closure, and their trails.");

    private final IndexView classes;

    /** @param classes of the program, as the build finds them */
    public ApiDescription(IndexView classes) {
        this.classes = classes;
    }

    @Override
    public void filterOpenAPI(OpenAPI document) {
        Components components = OASFactory.createComponents();
        new ActSchemas().addTo(components);
        components.addSecurityScheme(
                TOKEN,
                OASFactory.createSecurityScheme()
                        .type(SecurityScheme.Type.HTTP)
                        .scheme("bearer")
                        .description("A token made on one's own page: Authorization: Bearer secret-token:bt_..."));
        Endpoints endpoints = new Endpoints(classes);
        Operations operations = new Operations(components);
        Paths paths = OASFactory.createPaths();
        new TreeMap<>(document.getPaths().getPathItems()).forEach((address, item) -> {
            if (RequestKind.isApi(address)
                    && item.getOperations().keySet().stream()
                            .allMatch(verb -> endpoints.find(verb, address).isPresent())) {
                item.getOperations()
                        .forEach((verb, operation) -> operations.complete(
                                verb,
                                address,
                                operation,
                                endpoints.find(verb, address).orElseThrow()));
                if (address.equals(CALCULATION)) {
                    item.setPOST(null); // each has an address of its own below
                }
                paths.addPathItem(address, item);
            }
        });
        calculations(paths, components, operations, endpoints);
        document.setPaths(paths);
        document.setComponents(components);
        dress(document);
    }

    private static void dress(OpenAPI document) {
        document.setSecurity(List.of(OASFactory.createSecurityRequirement().addScheme(TOKEN)));
        document.setTags(TAGS.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(tag -> OASFactory.createTag().name(tag.getKey()).description(tag.getValue()))
                .toList());
        document.setServers(List.of(OASFactory.createServer().url("/").description("This server")));
        document.setInfo(Objects.requireNonNullElseGet(document.getInfo(), OASFactory::createInfo)
                .title("Benchtrail")
                .description(
                        "What pages do, for programs. Bodies and parameters are read strictly; what goes wrong is answered as"
                                + " RFC 9457 problem details. Each server answers so many requests of an account in a minute as"
                                + " RateLimit-Policy says, and RateLimit says how many are left.")
                .license(OASFactory.createLicense().name("Apache-2.0").identifier("Apache-2.0")));
    }

    /** Each calculation under its own address, with the schema of what it asks for and an example that can be sent. */
    private static void calculations(Paths paths, Components components, Operations operations, Endpoints endpoints) {
        Optional<Method> method = endpoints.find(PathItem.HttpMethod.POST, CALCULATION);
        for (Calculation<?> calculation : Bench.all()) {
            Operation operation = OASFactory.createOperation()
                    .summary(calculation.title())
                    .description(calculation.question())
                    .tags(new ArrayList<>(List.of("Bench")));
            operations.complete(
                    PathItem.HttpMethod.POST, "/api/bench/" + calculation.id(), operation, method.orElseThrow());
            operation.setOperationId("benchCalculate-" + calculation.id());
            operation.setParameters(null);
            operation.setRequestBody(Operations.json(new RecordSchemas(components, true).of(calculation.inputType())));
            operation
                    .getRequestBody()
                    .getContent()
                    .getMediaType("application/json")
                    .setExample(EXAMPLES.convertValue(calculation.example(), Map.class));
            paths.addPathItem(
                    "/api/bench/" + calculation.id(),
                    OASFactory.createPathItem().POST(operation));
        }
    }
}
