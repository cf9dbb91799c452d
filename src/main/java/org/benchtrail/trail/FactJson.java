package org.benchtrail.trail;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.databind.AnnotationIntrospector;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.introspect.Annotated;
import com.fasterxml.jackson.databind.introspect.NopAnnotationIntrospector;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.jsontype.NamedType;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.Later;

/** Facts as JSON: the record's components, and {@code kind} to tell which record it is. The same form in the trail and the API. */
public final class FactJson {
    private FactJson() {}

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    @JsonIgnoreProperties(ignoreUnknown = false)
    private interface Kinded {}

    /** Teaches a mapper to read and write facts. */
    public static ObjectMapper teach(ObjectMapper mapper) {
        mapper.addMixIn(Fact.class, Kinded.class);
        mapper.setAnnotationIntrospectors(
                AnnotationIntrospector.pair(
                        mapper.getSerializationConfig().getAnnotationIntrospector(), new LaterComponents()),
                mapper.getDeserializationConfig().getAnnotationIntrospector());
        FactKinds.all().forEach((name, kind) -> mapper.registerSubtypes(new NamedType(kind, name)));
        return mapper;
    }

    /** A mapper for facts from outside: what is unknown or of another type is refused, what is left out is false, 0 or null. */
    public static ObjectMapper forRequests() {
        return mapper().disable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
                .enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS);
    }

    /** Leaves out what came later than its kind where it is empty. */
    private static final class LaterComponents extends NopAnnotationIntrospector {
        @Override
        public JsonInclude.Value findPropertyInclusion(Annotated component) {
            return component.hasAnnotation(Later.class)
                    ? JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.NON_NULL)
                    : JsonInclude.Value.empty();
        }
    }

    /** The mapper of the trail: strict, so that nothing is dropped unseen. */
    static ObjectMapper mapper() {
        return teach(JsonMapper.builder()
                .addModule(new JavaTimeModule())
                .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
                .enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
                .build());
    }
}
